/** The twenty gates on one page, in the words that the code gives them. */
import { acceptableGates, assessReadiness, type Bundle, type Gate, type GateId, gateIds, parseBundle } from "../../../lib/fit";
import { gateNames } from "../../../lib/fit/decision-sentence";
import { tableOf } from "./as-written";
import { gateCases } from "./gate-cases";
import { citation, isSourceId, readyTransradial } from "./offered-to-pages";
import { writtenByCode } from "./written-by-code";

export function gatesPage(): string {
  const ready = parseBundle(readyTransradial());
  const gates = assessReadiness(ready).gates;
  return `${[
    writtenByCode("lib/fit and making/gate-cases.ts"),
    "# Gates",
    "Each gate as the code judges it, on the example episode of which the socket is ready (`tests/fit/ready-transradial.json`, a transradial limb), and on the same episode with one thing changed. The sentences are the program's own. What the states do to the decision: [Readiness](readiness.md).",
    tableOf(
      ["gate", "", "limit as it is read out", "may be accepted with a reason", "source"],
      gates.map((gate) => [
        `[${gate.id}](#${gate.id})`,
        gateNames[gate.id],
        gate.limitText,
        acceptable(gate.id),
        `\`${gate.source}\``,
      ]),
    ),
    ...gates.map((gate) => section(gate, ready)),
  ].join("\n\n")}\n`;
}

const acceptable = (id: GateId): string => ((acceptableGates as readonly GateId[]).includes(id) ? "yes" : "no");

/** The sources that a gate gave in any of its cases. */
export function gateSources(): Map<GateId, Set<string>> {
  const ready = parseBundle(readyTransradial());
  const judged = [ready, ...gateCases.map(({ to }) => changedBy(to, ready))].map((bundle) => assessReadiness(bundle).gates);
  return new Map(gateIds.map((id) => [id, new Set(judged.map((gates) => gateIn(gates, id).source))]));
}

function changedBy(to: (bundle: Bundle) => void, ready: Bundle): Bundle {
  const changed = structuredClone(ready);
  to(changed);
  return changed;
}

function section(gate: Gate, ready: Bundle): string {
  const rows = gateCases
    .filter(({ gate: id }) => id === gate.id)
    .map(({ change, to }) => {
      const assessment = assessReadiness(changedBy(to, ready));
      const { state, why } = gateIn(assessment.gates, gate.id);
      return [change, `**${state}**`, why, assessment.decision];
    });
  const source = isSourceId(gate.source) ? citation(gate.source) : gate.source;
  return [
    `## ${gate.id}`,
    `Limit: ${gate.limitText ?? "none"}. ${source}`,
    tableOf(
      ["what is changed", "state", "what the gate says", "decision"],
      [["nothing", `**${gate.state}**`, gate.why, "ready"], ...rows],
    ),
  ].join("\n\n");
}

function gateIn(gates: readonly Gate[], id: GateId): Gate {
  const found = gates[gateIds.indexOf(id)];
  if (!found) throw new Error(`There is no gate ${id}.`);
  return found;
}
