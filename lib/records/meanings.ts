/** What a signature can mean. */
export const trialMeaning = "wear trial accepted";
export const releaseMeaning = "release for definitive fabrication";
