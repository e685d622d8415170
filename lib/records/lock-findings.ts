/** Whether the locks of a store (triggers, made by its migrations) are all there: whoever took one off may have changed what it held. */
import type Connection from "better-sqlite3";
import type { Finding } from "./record-findings";

const onlyAdded = [
  ...["TrailEntry", "SignOff", "Withdrawal", "Countersignature", "Addendum", "GateAcceptance", "LimbMeasurement", "Fitting"],
  ...["TrialEvent", "SetAsideEvent", "SkinInspection", "SkinMark", "SocketStateChange", "CautionAcknowledgement", "MadeCheck"],
  ...["WearPlan", "Limit", "BenchReading", "BenchQuestion", "BenchAnswer"],
];
const neverDeleted = ["Wearer", "Caution", "Episode", "CheckSocket", "Adjustment", "WearTrial"];
const signed = ["CheckSocket_signed", "Adjustment_signed", "WearTrial_signed", "Episode_released"];
const closed = ["LimbMeasurement", "CheckSocket", "Adjustment", "Fitting", "WearTrial", "TrialEvent", "SkinInspection"];
const notReplaced = ["TrailEntry", "SignOff", "Withdrawal", "Countersignature", "Addendum", "GateAcceptance"];

export const locks: readonly string[] = [
  ...onlyAdded.flatMap((table) => [`${table}_no_update`, `${table}_no_delete`]),
  ...neverDeleted.map((table) => `${table}_no_delete`),
  ...signed,
  ...closed.map((table) => `${table}_released`),
  ...notReplaced.map((table) => `${table}_no_replace`),
];

export function lockFindings(connection: Connection.Database): Finding[] {
  const there = new Set(connection.prepare("SELECT name FROM sqlite_master WHERE type = 'trigger'").pluck().all());
  const missing = locks.filter((name) => !there.has(name));
  if (missing.length === 0) return [{ state: "met", words: `All ${locks.length} locks of the store are in place.` }];
  return [
    {
      state: "unknown",
      words: `${missing.length} of the ${locks.length} locks of the store are missing (${missing.slice(0, 3).join(", ")}${missing.length > 3 ? " …" : ""}): someone took them off, and what they hold may have been changed since.`,
    },
  ];
}
