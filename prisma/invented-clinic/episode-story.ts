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
import { demoPassword, type Who } from "./accounts";
import { minutesAfter, type When } from "./calendar";
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
}

export class EpisodeStory {
  readonly id: string;
  readonly level: Level;
  readonly prosthetist: "lead" | "junior";
  readonly limb: Pick<EpisodeOpened, "stationsFrom" | "limbLengthMm">;
  private socketCount = 0;

  constructor(
    readonly timeline: Timeline,
    wearerId: string,
    when: When,
    { prosthetist, lostDaysAgo, device, targetInDays, ...episode }: EpisodeOpened,
  ) {
    this.id = timeline.newId("episode");
    this.level = episode.level;
    this.prosthetist = prosthetist;
    this.limb = episode;
    const { day } = timeline.calendar;
    this.add(when, "episode opened", (cast) =>
      openEpisode(cast[prosthetist], {
        ...episode,
        id: this.id,
        wearerId,
        prosthetistId: cast[prosthetist].id,
        lossOn: lostDaysAgo === undefined ? undefined : day(lostDaysAgo),
        targetOn: targetInDays === undefined ? undefined : day(-targetInDays),
        deviceMassKg: device?.massKg,
        deviceCentreOfMassMm: device?.centreMm,
        deviceNote: device?.note,
      }),
    );
  }

  cautionsRead(when: When): this {
    return this.add(when, "cautions read", (cast) => acknowledgeCautions(cast[this.prosthetist], { episodeId: this.id }));
  }

  /** Circumferences in mm, at equal distances of `stepMm` from where this episode's stations begin. */
  measured(when: When, stepMm: number, circumferencesMm: readonly number[], options: MeasuringOptions = {}): LimbMeasured {
    const { who = "assistant", ...how } = options;
    const id = this.timeline.newId("limb measurement");
    const stations = circumferencesMm.map((circumferenceMm, index) => ({ distanceMm: index * stepMm, circumferenceMm }));
    const at = this.timeline.calendar.instant(when);
    this.timeline.add(minutesAfter(at, 8), "limb measured", (cast) =>
      measureLimb(cast[who], { method: "tape", minutesSinceDoffing: 40, ...how, id, episodeId: this.id, at, stations }),
    );
    return { id, stations };
  }

  socket(when: When, specification: SocketSpecification): SocketStory {
    this.socketCount += 1;
    return SocketStory.specified(this, this.socketCount, when, specification);
  }

  /** Signs as the page asks for it: what is close is read, what is accepted has its reason. */
  signed(when: When, meaning: Meaning, acceptances: { gate: string; why: string }[] = []): Signature {
    const signature: Signature = { signOffId: undefined };
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
    return this.add(when, "signature withdrawn", (cast) =>
      withdrawSignature(cast[this.prosthetist], { signOffId: signature.signOffId, why, password: demoPassword }),
    );
  }

  /** Measured against its sheet by tape, then handed over. */
  delivered(when: When, note?: string): this {
    const at = this.timeline.calendar.instant(when);
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
    return this.add(when, course, (cast) => setCourse(cast[this.prosthetist], { episodeId: this.id, course, why }));
  }

  struckOut(when: When, why: string): this {
    return this.add(when, "struck out", (cast) => strikeOutEpisode(cast[this.prosthetist], { episodeId: this.id, why }));
  }

  private add(when: When | Date, what: string, run: Step["run"]): this {
    this.timeline.add(when, what, run);
    return this;
  }
}
