import type { Step } from "@/lib/fit/assessment";

/** The heading of each next step, in the order in which a day's work is taken up. */
export const stepHeadings: Record<Step, string> = {
  inspect: "Look at the skin again",
  "finish trial": "Finish a wear trial",
  sign: "Sign off",
  release: "Release",
  deliver: "Deliver",
  "begin trial": "Begin a wear trial",
  "alter or remake": "Alter or remake",
  fit: "Fit a socket",
  send: "Send a socket",
  make: "Make a socket",
  "plan a socket": "Plan a socket",
  measure: "Measure the limb",
};

export const stepOrder = Object.keys(stepHeadings) as Step[]; // the keys of the record above, in its order
