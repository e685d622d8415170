/** One episode's story: the limb's size, the series of sockets, the signatures and the end. */
import type { Level, Station, Suspension } from "@/lib/fit";
import { acknowledgeCautions } from "@/lib/records/acknowledge-cautions";
import { checkMadeSocket } from "@/lib/records/check-made-socket";
import { deliverSocket } from "@/lib/records/deliver-socket";
import { releaseMeaning } from "@/lib/records/meanings";
import { measureLimb } from "@/lib/records/measure-limb";
import { openEpisode, setCourse, strikeOutEpisode } from "@/lib/records/open-episode";
import { definitiveStations } from "@/lib/records/released";
import { seeEpisode } from "@/lib/records/see-episode";
import { digestOfShown } from "@/lib/records/shown-evidence";
import { sign } from "@/lib/records/sign";
import { withdrawSignature } from "@/lib/records/withdraw-signature";
import { demoPassword, staff, type Who } from "./accounts";
import { minutesAfter, type When } from "./calendar";
import { EpisodeOnPaper, type SignatureOnPaper, type WearerOnPaper } from "./episode-on-paper";
import { SocketStory } from "./socket-story";
import type { Step, Timeline } from "./timeline";
import type { LimbMeasured, SocketSpecification } from "./told";

export interface EpisodeOpened {
  prosthetist: "lead" | "junior";
  side: "left" | "right";
  level: Level;
  cause: "congenital" | "trauma" | "vascular" | "tumour" | "infection" | "other";
  /** Left out for a limb difference from birth. */
  lostDaysAgo?: number;
  landmark: string;
  stationsFrom: "distal end" | "proximal landmark";
  limbLengthMm: number;
  suspension: Suspension;
  device?: { massKg: number; centreMm: number; note?: string };
  goals: string;
  targetInDays?: number;
}

interface MeasuringOptions {
  who?: Who;
  method?: "tape" | "scan";
  minutesSinceDoffing?: number;
  capHeightMm?: number;
  linerOn?: boolean;
  note?: string;
}

/** A tape is read to half a millimetre. */
const asTaped = ({ distanceMm, circumferenceMm }: Station): Station => ({
  distanceMm,
  circumferenceMm: Math.round(circumferenceMm * 2) / 2,
});

type Meaning = "wear trial accepted" | "release for definitive fabrication";

/** Its id is known once it was made. */
interface Signature {
  signOffId: string | undefined;
  onPaper: SignatureOnPaper;
}

export class EpisodeStory {
  readonly id: string;
  readonly level: Level;
  readonly prosthetist: "lead" | "junior";
  readonly limb: Pick<EpisodeOpened, "stationsFrom" | "limbLengthMm">;
  readonly onPaper: EpisodeOnPaper;
  private socketCount = 0;

  constructor(
    readonly timeline: Timeline,
    wearer: { id: string; onPaper: WearerOnPaper },
    when: When,
    { prosthetist, lostDaysAgo, device, targetInDays, ...episode }: EpisodeOpened,
  ) {
    this.id = timeline.newId("episode");
    this.level = episode.level;
    this.prosthetist = prosthetist;
    this.limb = episode;
    const { day, instant } = timeline.calendar;
    const lossOn = lostDaysAgo === undefined ? undefined : day(lostDaysAgo);
    const { goals: _, ...lasting } = episode;
    this.onPaper = new EpisodeOnPaper(wearer.onPaper, instant(when), {
      ...lasting,
      id: this.id,
      lossOn,
      device: device && { massKg: device.massKg, centreOfMassMm: device.centreMm },
    });
    timeline.episodes.push(this.onPaper);
    this.add(when, "episode opened", (cast) =>
      openEpisode(cast[prosthetist], {
        ...episode,
        id: this.id,
        wearerId: wearer.id,
        prosthetistId: cast[prosthetist].id,
        lossOn,
        targetOn: targetInDays === undefined ? undefined : day(-targetInDays),
        deviceMassKg: device?.massKg,
        deviceCentreOfMassMm: device?.centreMm,
        deviceNote: device?.note,
      }),
    );
  }

  cautionsRead(when: When): this {
    this.onPaper.readCautions(staff[this.prosthetist].name, this.timeline.calendar.instant(when));
    return this.add(when, "cautions read", (cast) => acknowledgeCautions(cast[this.prosthetist], { episodeId: this.id }));
  }

  /** Circumferences in mm, at equal distances of `stepMm` from where this episode's stations begin. */
  measured(when: When, stepMm: number, circumferencesMm: readonly number[], options: MeasuringOptions = {}): LimbMeasured {
    const { who = "assistant", ...said } = options;
    const how = { method: "tape" as const, minutesSinceDoffing: 40, ...said };
    const id = this.timeline.newId("limb measurement");
    const stations = circumferencesMm.map((circumferenceMm, index) => ({ distanceMm: index * stepMm, circumferenceMm }));
    const at = this.timeline.calendar.instant(when);
    this.timeline.add(minutesAfter(at, 8), "limb measured", (cast) =>
      measureLimb(cast[who], { ...how, id, episodeId: this.id, at, stations }),
    );
    const { method, minutesSinceDoffing, capHeightMm } = how;
    this.onPaper.measurements.push({ id, at, method, minutesSinceDoffing, stations, capHeightMm });
    return { id, stations };
  }

  socket(when: When, specification: SocketSpecification): SocketStory {
    this.socketCount += 1;
    return SocketStory.specified(this, this.socketCount, when, specification);
  }

  /** Signs as the page asks for it: what is close is read, what is accepted has its reason. */
  signed(when: When, meaning: Meaning, acceptances: { gate: string; why: string }[] = []): Signature {
    const at = this.timeline.calendar.instant(when);
    const by = staff[this.prosthetist].name;
    const socketId = this.onPaper.sockets.at(-1)?.id;
    const signature: Signature = { signOffId: undefined, onPaper: { socketId, meaning, by, at } };
    this.onPaper.signatures.push(signature.onPaper);
    this.onPaper.acceptances.push(...acceptances.map(({ gate, why }) => ({ gate, by, at, why })));
    if (socketId !== undefined && meaning === releaseMeaning) this.onPaper.move(socketId, "released", at);
    this.add(when, `signed: ${meaning}`, async (cast) => {
      const signer = cast[this.prosthetist];
      const { episode, assessment, bundle } = await seeEpisode(signer, this.id);
      const closeRead = assessment.gates.filter(({ state }) => state === "close").map(({ id }) => id);
      const { evidenceVersion } = episode;
      const shown = digestOfShown(bundle, assessment);
      const signing = { episodeId: this.id, evidenceVersion, shown, meaning, acceptances, closeRead, password: demoPassword };
      const definitiveMaterial = meaning === releaseMeaning ? "carbon fibre laminate, acrylic resin" : undefined;
      ({ signOffId: signature.signOffId } = await sign(signer, { ...signing, definitiveMaterial }));
    });
    return signature;
  }

  withdrawn(when: When, signature: Signature, why: string): this {
    const at = this.timeline.calendar.instant(when);
    signature.onPaper.withdrawnAt = at;
    if (signature.onPaper.socketId !== undefined) this.onPaper.move(signature.onPaper.socketId, "fitted", at);
    return this.add(when, "signature withdrawn", (cast) =>
      withdrawSignature(cast[this.prosthetist], { signOffId: signature.signOffId, why, password: demoPassword }),
    );
  }

  /** Measured against its sheet by tape, then handed over. */
  delivered(when: When, note?: string): this {
    const at = this.timeline.calendar.instant(when);
    this.onPaper.deliveredAt = at;
    return this.add(at, "delivered", async ({ assistant }) => {
      const { episode } = await seeEpisode(assistant, this.id);
      const release = episode.signOffs.findLast(({ meaning, withdrawal }) => meaning === releaseMeaning && withdrawal === null);
      if (!release) throw new Error("a story delivers what was released");
      const stations = definitiveStations(release.evidence).map(asTaped);
      await checkMadeSocket(assistant, { signOffId: release.id, at, method: "tape", stations });
      return deliverSocket(assistant, { episodeId: this.id, at, note });
    });
  }

  course(when: When, course: "on hold" | "closed" | "in fitting", why?: string): this {
    const at = this.timeline.calendar.instant(when);
    this.onPaper.onHoldAt = course === "on hold" ? at : null;
    this.onPaper.closedAt = course === "closed" ? at : null;
    return this.add(when, course, (cast) => setCourse(cast[this.prosthetist], { episodeId: this.id, course, why }));
  }

  struckOut(when: When, why: string): this {
    this.onPaper.struckOutAt = this.timeline.calendar.instant(when);
    return this.add(when, "struck out", (cast) => strikeOutEpisode(cast[this.prosthetist], { episodeId: this.id, why }));
  }

  private add(when: When | Date, what: string, run: Step["run"]): this {
    this.timeline.add(when, what, run);
    return this;
  }
}
