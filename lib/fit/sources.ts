/** Where every limit and method comes from. A reading names its source by id. */

export const sourceKindNames = ["published", "common practice", "clinic setting", "from memory"] as const;
/**
 * *from memory*: a published work whose figure was not at hand to check.
 * *common practice*: what practitioners do, with no source. *clinic setting*: this clinic's own choice.
 */
export type SourceKind = (typeof sourceKindNames)[number];

export interface Source {
  kind: SourceKind;
  /** The work in full, or in plain words what the figure rests on. */
  citation: string;
}

const published = (citation: string): Source => ({ kind: "published", citation });
const fromMemory = (citation: string): Source => ({ kind: "from memory", citation });
const commonPractice = (what: string): Source => ({ kind: "common practice", citation: `${what} Common practice, no source.` });
const clinicSetting = (what: string): Source => ({ kind: "clinic setting", citation: what });

export const sources = {
  "clinic-setting": clinicSetting("This clinic's own choice, which an administrator may change within its range."),
  "common-practice": commonPractice("What practitioners commonly do."),
  plain: commonPractice("Follows from what was recorded."),

  "jarl-2003": published(
    "Jarl, residual-limb volume by measuring tape (truncated cones with a spherical segment; 5 % is about one sock). Jönköping; 2003.",
  ),
  "sanders-fatone-2011": published(
    "Sanders JE, Fatone S. Residual limb volume change: systematic review of measurement and management. J Rehabil Res Dev 2011;48(8):949–986.",
  ),
  "bland-altman-1996": published("Bland JM, Altman DG. Measurement error. BMJ 1996;312:1654. With Dahlberg 1940: s = √(Σd²/2n)."),
  "levenberg-marquardt": fromMemory(
    "Marquardt DW. An algorithm for least-squares estimation of nonlinear parameters. J Soc Ind Appl Math 1963;11:431–441, by the library ml-levenberg-marquardt.",
  ),
  "two-one-sided-tests": fromMemory(
    "Schuirmann DJ. A comparison of the two one-sided tests procedure and the power approach. J Pharmacokinet Biopharm 1987;15:657–680.",
  ),
  "paterno-2021": published(
    "Paternò L et al. Residual limb volume fluctuations in transfemoral amputees. Sci Rep 2021;11:12273 (abstract): 30 min on average until the volume is stable after doffing; no difference between morning and afternoon.",
  ),
  "sanders-2013": published("Sanders et al., J Rehabil Res Dev 2013;50(7):1007–1016."),
  "sanders-severance-2012": published(
    "Sanders JE, Severance MR, Allyn KJ. Computer-socket manufacturing error: how much before it is clinically apparent? J Rehabil Res Dev 2012;49(4):567–582.",
  ),
  "hyndman-fan-1996": fromMemory("Hyndman RJ, Fan Y. Sample quantiles in statistical packages. Am Stat 1996;50:361–365."),
  "raised-cosine": clinicSetting(
    "A relief or build-up is taken as a raised cosine over a quarter turn: ΔC = a·π/4, to first order.",
  ),

  "nist-sp-811": published(
    "Thompson A, Taylor BN. Guide for the use of the International System of Units (SI). NIST Special Publication 811. Gaithersburg; 2008, appendix B.8: 1 in = 25.4 mm, 1 lb = 0.453 592 37 kg, 1 lbf = 4.448 221 615 260 5 N, all exact.",
  ),
  "moment-about-joint": published(
    "Statics: the moment of a weight about a joint is m·g·L, with standard gravity g = 9.80665 m/s² (CGPM 1901).",
  ),
  "body-powered-standards": published(
    "Transradial Body-Powered Standards. In: Upper Limb Prosthetics & Orthotics, open text, University of Washington: at most 25 mm at 222 N or one third of body weight; at most 10° of elbow flexion lost; self-suspended 105° kept.",
  ),
  "vacuum-pistoning": published(
    "PMC4208197 (abstract): 6 mm at 90 N was the largest displacement seen, with an air-pneumatic suspension of a transtibial socket. It names no limit; here it is taken as one for vacuum.",
  ),
  "eshraghi-2012": published(
    "Eshraghi A et al. Pistoning assessment in lower limb prosthetic sockets. Prosthet Orthot Int 2012;36:15–24: there is no agreed range.",
  ),
  "suspension-setting": clinicSetting(
    "No range of displacement is agreed (Eshraghi et al., Prosthet Orthot Int 2012;36:15–24): this clinic's own limit.",
  ),
  "suspension-error": fromMemory("2 mm for a displacement from fewer than three pulls."),
  "goniometer-error": fromMemory("A goniometer reading of one joint has a standard error of about 3°."),

  "wear-trial": commonPractice("A wear trial is a record of events in the order of time."),
  "trial-length": commonPractice("20 minutes under load at the least."),
  "trial-check-ins": commonPractice("A check-in every 5 minutes; a gap of one and a half intervals is let pass."),
  "trial-record": commonPractice("A record that contradicts itself proves nothing good."),
  "stop-signs": commonPractice(
    "Broken skin, sharp or rising pain, numbness or tingling that stays, colour change or cold, dizziness, the wearer's wish.",
  ),
  "hanspal-2003": published(
    "Hanspal RS, Fisher K, Nieveen R. Prosthetic socket fit comfort score. Disabil Rehabil 2003;25:1278–1280.",
  ),
  "hafner-2022": published(
    "Hafner et al., Arch Phys Med Rehabil 2022;103:1201–1204: small changes of one person's comfort score cannot be trusted.",
  ),
  "comfort-limits": clinicSetting("On the 0–10 socket comfort score (Hanspal et al., Disabil Rehabil 2003;25:1278–1280)."),
  "comfort-error": fromMemory(
    "Standard error 1.0 of one socket comfort score (after Hafner et al., Arch Phys Med Rehabil 2022;103:1201–1204).",
  ),
  "pain-cut-points": commonPractice("On the 0–10 numeric scale 4 begins moderate and 7 severe pain."),
  "farrar-2001": published(
    "Farrar JT et al. Clinical importance of changes in chronic pain intensity. Pain 2001;94:149–158: 2 points or 30 %.",
  ),
  "borg-1982": fromMemory("Borg GAV. Psychophysical bases of perceived exertion. Med Sci Sports Exerc 1982;14:377–381."),
  "mann-kendall": published(
    "Mann HB. Econometrica 1945;13:245–259; Kendall MG. Rank correlation methods. London: Griffin; 1948.",
  ),
  "theil-sen": published("Theil H. Proc K Ned Akad Wet 1950;53:386–392; Sen PK. J Am Stat Assoc 1968;63:1379–1389."),

  "npiap-2016": published(
    "Edsberg LE et al. Revised National Pressure Ulcer Advisory Panel pressure injury staging system. J Wound Ostomy Continence Nurs 2016;43:585–597.",
  ),
  "fading-20-min": commonPractice("Marks that fade within 20 minutes of doffing are let pass in clinics' leaflets."),
  "mark-grade": clinicSetting("An ordinal scale of this tool, 0 to 4; it has not been validated."),
  "pielou-1966": fromMemory(
    "Pielou EC. The measurement of diversity in different types of biological collections. J Theor Biol 1966;13:131–144.",
  ),
  "even-marks": commonPractice("Marks of even strength round the whole limb are what one wants."),
  "carry-limits": clinicSetting(
    "What may be changed between the last check socket and the definitive one without another check socket.",
  ),

  "wear-schedule": commonPractice(
    "Wearing time is built up over a week, as clinics' leaflets propose; the wearer's own prosthetist changes it.",
  ),

  "kaplan-meier": published(
    "Kaplan EL, Meier P. Nonparametric estimation from incomplete observations. J Am Stat Assoc 1958;53:457–481. Errors: Greenwood M. The natural duration of cancer. Rep Public Health Med Subj 1926;33:1–26.",
  ),
  "log-rank": published(
    "Mantel N. Evaluation of survival data and two new rank order statistics arising in its consideration. Cancer Chemother Rep 1966;50:163–170.",
  ),
  wilson: published(
    "Newcombe RG. Two-sided confidence intervals for the single proportion. Stat Med 1998;17:857–872. With Wilson EB. J Am Stat Assoc 1927;22:209–212.",
  ),
  "normal-tail": fromMemory(
    "Abramowitz M, Stegun IA. Handbook of mathematical functions. Washington: NBS; 1964, 26.2.11 and 26.2.14.",
  ),

  "derringer-suich-1980": fromMemory(
    "Derringer G, Suich R. Simultaneous optimization of several response variables. J Qual Technol 1980;12:214–219.",
  ),
  "kragten-1994": published(
    "Kragten J. Calculating standard deviations and confidence intervals with a universally applicable spreadsheet technique. Analyst 1994;119:2161–2165.",
  ),
} as const satisfies Record<string, Source>;

export type SourceId = keyof typeof sources;

/** The kind of each source by its id. */
export const sourceKinds: Readonly<Record<string, SourceKind>> = Object.fromEntries(
  Object.entries(sources).map(([id, { kind }]) => [id, kind]),
);
