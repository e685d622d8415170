/**
 * What a release sheet says, in its order: the page and the PDF set the same words. What the bench must not read (why
 * something is adjusted, why a check was accepted, why a signature was withdrawn) is left out here, once for both.
 */
import { adjustmentWords } from "@/app/_parts/adjustment-words";
import { dayAndTimeAt } from "@/app/_parts/dates";
import { gateWords } from "@/app/_parts/gate-words";
import { formatNumber } from "@/app/_parts/numbers";
import type { GateId } from "@/lib/fit/words";
import { cautionForBench, type ReleaseSheet, releaseSheet } from "@/lib/print/release-sheet";
import { awaitsCountersignature, releaseMeaning } from "@/lib/records/meanings";
import type { SeenRelease } from "@/lib/records/see-release";

export interface SheetWords {
  isRelease: boolean;
  clinic: string;
  title: string;
  socket: string;
  signedAt: string;
  /** Not to be made from, and why: first on the sheet. */
  stops: { lead: string; words: string }[];
  dimensions: ReleaseSheet["dimensions"];
  dimensionHeads: [string, string, string, string];
  dimensionRows: [string, string, string, string][];
  dimensionsNote: string;
  carried: { id: string; words: string; why: string | null }[];
  nothingCarried: string;
  makeFrom: ReleaseSheet["makeFrom"];
  cautions: string[];
  onReturn: string[];
  accepted: { id: string; words: string; why: string | null }[];
  signature: string[];
  addenda: { id: string; words: string; by: string }[];
  digest: string;
  small: string[];
}

interface Reader {
  clinic: { name: string; invented: boolean; phone: string | null } | null;
  /** Whoever may see wearers reads the reasons; the bench does not, and neither does the PDF, which goes there. */
  withReasons: boolean;
}

export function sheetWords({ signOff, evidence }: SeenRelease, { clinic, withReasons }: Reader): SheetWords {
  const sheet = releaseSheet(evidence);
  const isRelease = signOff.meaning === releaseMeaning;
  const at = (instant: Date) => dayAndTimeAt(instant, signOff.timeZone);
  const zone = signOff.timeZone.replaceAll("_", " ");
  const why = (words: string) => (withReasons ? words : null);
  return {
    isRelease,
    clinic: `${clinic?.name ?? ""}${clinic?.invented ? " · invented data" : ""}`,
    title: isRelease ? "Release for definitive fabrication" : "Wear trial accepted",
    socket: `Socket ${sheet.socketNumber} of ${evidence.bench.clinicNumber}, ${sheet.limbWords}`,
    signedAt: `Signed ${at(signOff.at)} (${zone})`,
    stops: stopsOf(signOff, { at, withReasons, isRelease }),
    dimensions: sheet.dimensions,
    dimensionHeads: [`from ${evidence.bundle.episode.stationsFrom}`, "limb", `socket ${sheet.socketNumber}`, "definitive"],
    dimensionRows: sheet.dimensions.map(({ distanceMm, limbMm, checkSocketMm, definitiveMm }) => [
      formatNumber(distanceMm, 0),
      limbMm === undefined ? "not measured" : formatNumber(limbMm, 1),
      formatNumber(checkSocketMm, 1),
      formatNumber(definitiveMm, 1),
    ]),
    dimensionsNote: "Inside circumferences in mm, by tape; its error is about 1.5 mm.",
    carried: sheet.carried.map((adjustment) => ({
      id: adjustment.id,
      words: adjustmentWords(adjustment),
      why: why(adjustment.reason),
    })),
    nothingCarried: `Nothing: the definitive socket is a copy of check socket ${sheet.socketNumber}.`,
    makeFrom: sheet.makeFrom,
    cautions: [
      ...sheet.cautions.map((kind) => cautionForBench[kind]),
      `Follow local rules and the makers’ instructions. What is not on this sheet, ask the prosthetist before making${clinic?.phone ? `: ${clinic.phone}` : ""}.`,
    ],
    onReturn,
    accepted: sheet.conditions.map(({ gate, by, why: reason }) => ({
      id: gate,
      words: `${gateWords[gate as GateId] ?? gate}, by ${by}`, // a gate of an assessment
      why: why(reason),
    })),
    signature: [
      [`${signOff.byName}, prosthetist`, signOff.credentialsLine].filter(Boolean).join(", "),
      signOff.statement,
      ...(signOff.countersignature ? [countersigned(signOff.countersignature, at)] : []),
      ...closeRead(evidence.closeRead),
    ],
    addenda: signOff.addenda.map(({ id, words, byName, at: added }) => ({ id, words, by: `${byName}, ${at(added)}` })),
    digest: `SHA-256 of the evidence: ${signOff.digest.match(/.{1,8}/g)?.join(" ")}`,
    small: [
      `Advice of this program rests on recorded findings; a licensed prosthetist decides. Limits: ${signOff.rulesVersion}.`,
    ],
  };
}

/** Before it goes to the wearer. The limits of the scan: Sanders, Severance & Allyn, JRRD 2012;49(4):567–582. */
const onReturn = [
  "Measure the inside at every level of this sheet. By scan or caliper a mean radial error above 0.25 mm is to be made again, an interquartile range above 0.40 mm to be worked over; a tape cannot show either.",
  "Trim lines, edges and the carried adjustments: each against this sheet, by eye and by hand; no sharp edge, no rough seam.",
  "Suspension parts and length: present, firm, as written here.",
];

type SignOff = SeenRelease["signOff"];

function stopsOf(
  signOff: SignOff,
  { at, withReasons, isRelease }: { at: (instant: Date) => string; withReasons: boolean; isRelease: boolean },
): SheetWords["stops"] {
  const { withdrawal } = signOff;
  return [
    ...(withdrawal
      ? [
          {
            lead: "Withdrawn.",
            words: `${withdrawal.byName}, ${at(withdrawal.at)}${withReasons ? `: ${withdrawal.why}` : "."} Do not make anything from this sheet.`,
          },
        ]
      : []),
    ...(awaitsCountersignature(signOff)
      ? [
          {
            lead: "Not in force yet.",
            words: "A second prosthetist of this clinic has to sign this release as well. Do not make anything from this sheet.",
          },
        ]
      : []),
    ...(isRelease
      ? []
      : [
          {
            lead: "This is no release.",
            words:
              "A prosthetist accepted the wear trial; nothing is made from this sheet. The release for definitive fabrication has a sheet of its own.",
          },
        ]),
  ];
}

const countersigned = (
  { byName, credentialsLine, at: signed }: NonNullable<SignOff["countersignature"]>,
  at: (instant: Date) => string,
): string => `Countersigned by ${byName}, prosthetist${credentialsLine ? `, ${credentialsLine}` : ""}, ${at(signed)}`;

const closeRead = (gates: readonly string[]): string[] =>
  gates.length === 0
    ? []
    : [`Read as close to their limit: ${gates.map((gate) => (gateWords[gate as GateId] ?? gate).toLowerCase()).join(", ")}.`]; // gates of an assessment
