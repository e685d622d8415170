/** What a signature can mean. */
export const trialMeaning = "wear trial accepted";
export const releaseMeaning = "release for definitive fabrication";
export const meanings = [trialMeaning, releaseMeaning] as const;
export type Meaning = (typeof meanings)[number];

/** What the signer declares, by what the signature means. */
export const statements: Record<Meaning, string> = {
  [trialMeaning]: "I have examined the evidence of this wear trial and accept it.",
  [releaseMeaning]: "I have examined the evidence and release this socket for definitive fabrication.",
};

export const countersignStatement = "I have examined the same evidence and sign this release as the second prosthetist.";

interface Signed {
  countersignAsked: boolean | null;
  countersignature: unknown;
  withdrawal: unknown;
}

/** A release that waits for the second prosthetist is not in force: nothing is made from it. */
export const awaitsCountersignature = ({ countersignAsked, countersignature, withdrawal }: Signed): boolean =>
  countersignAsked === true && countersignature === null && withdrawal === null;
