/** The file of one episode as JSON Schema, made from the schema that the program itself reads with. */
import { z } from "zod";
import * as fit from "../../../lib/fit";

/** Parts that occur more than once, or that a reader looks for by name. */
const named: Readonly<Record<string, z.ZodType>> = {
  Id: fit.EpisodeRecord.shape.id,
  Instant: fit.Bundle.shape.asOf,
  Station: fit.Station,
  Adjustment: fit.Adjustment,
  SkinMark: fit.SkinMark,
  Inspection: fit.Inspection,
  Feeling: fit.Feeling,
  TrialEvent: fit.TrialEvent,
  TrialPlan: fit.TrialPlan,
  WearTrial: fit.WearTrialRecord,
  Pull: fit.Pull,
  JointMotion: fit.JointMotion,
  Fitting: fit.FittingRecord,
  LimbMeasurement: fit.LimbMeasurement,
  CheckSocket: fit.CheckSocket,
  Caution: fit.Caution,
  Episode: fit.EpisodeRecord,
  Acceptance: fit.Acceptance,
  SignOff: fit.SignOffRecord,
};

export interface PublishedSchema {
  schema: Record<string, unknown>;
  /** With what words the program refuses what JSON Schema has no word for. References between records come on top. */
  refusals: string[];
}

export function bundleSchema(): PublishedSchema {
  const parts = z.registry<{ id: string }>();
  for (const [id, part] of Object.entries(named)) parts.add(part, { id });
  const refusals = new Set<string>();
  const { $schema, ...schema } = z.toJSONSchema(fit.Bundle, {
    target: "draft-2020-12",
    metadata: parts,
    override: ({ zodSchema, jsonSchema }) => {
      for (const refusal of customChecks(zodSchema)) {
        refusals.add(refusal);
        jsonSchema.$comment = `Beyond this schema the program refuses, with the words: ${refusal}.`;
      }
    },
  });
  return {
    schema: {
      $schema,
      $id: fit.bundleFormat,
      title: "Fitting bundle",
      description:
        "One episode of fitting one limb prosthesis: what is judged, signed, exported and imported. Lengths are in mm, masses in kg, loads in N, angles in degrees, minutes in min; ratings run from 0 to 10; instants carry their offset from UTC. What a $comment says, and references between records, the program checks beyond this schema.",
      ...schema,
    },
    refusals: [...refusals],
  };
}

/** The messages of checks that are code and not a keyword. */
function customChecks({ _zod: { def } }: z.core.$ZodType): string[] {
  return (def.checks ?? []).flatMap(({ _zod: { def: check } }) => {
    const words = check.error as (() => unknown) | undefined; // a message given as text is a function without an argument
    const message = check.check === "custom" ? words?.() : undefined;
    return typeof message === "string" ? [message] : [];
  });
}

export const bundleSchemaText = (): string => `${JSON.stringify(bundleSchema().schema, null, 2)}\n`;
