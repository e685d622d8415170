/** What the wearer's page says, in its order: the page and the PDF set the same words. Reading age about twelve. */
export const wearingWords = {
  title: "Getting used to your new socket",
  withdrawn: { lead: "Withdrawn.", words: "Do not wear the socket by this page. Ask the clinic." },
  heads: ["Day", "Wear it for", "Tick each time", "Marks gone after 20 minutes?"],
  goesOn: { ticks: "and so on", marks: "look every evening" },
  everyTime: "Every time you take it off",
  steps: [
    { lead: "", words: "Look at your skin all round. Use a mirror for the back and the end." },
    { lead: "", words: "Look again after 20 minutes." },
    { lead: "Red marks gone and nothing hurts?", words: "Go on with the list." },
    { lead: "Marks still there, or it hurts a little?", words: "Do the same day again, or go back one." },
  ],
  draw: "Draw here where a mark stays",
  stop: "Take it off, leave it off, and call",
  stops: [
    "Skin that is open, blistered or purple.",
    "Redness that lasts longer than the day before.",
    "The limb is numb, tingles, turns cold, swells or changes colour.",
    "Redness that spreads, or a fever: call a doctor the same day.",
  ],
  follow: "Your prosthetist may change it. Follow what they and the makers of the parts say.",
} as const;
