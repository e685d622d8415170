/**
 * What a story says of one episode, as the bundle that the store would give: the same story is told to the store by
 * commands, and here on paper. With it the stories are judged for many days without loading any.
 */
import { Bundle, bundleFormat } from "@/lib/fit";
import { releaseMeaning } from "@/lib/records/meanings";
import { clinicTimeZone } from "./accounts";

type Written = Record<string, unknown>;

interface SocketOnPaper extends Written {
  id: string;
  state: string;
  stateSince: Date;
}

export interface SignatureOnPaper {
  socketId: string | undefined;
  meaning: string;
  by: string;
  at: Date;
  withdrawnAt?: Date;
}

/** What is the same in all episodes of a wearer. */
export interface WearerOnPaper {
  clinicNumber: string;
  birthOn: string;
  bodyMassKg: number;
  cautions: { kind: string; note?: string | undefined }[];
}

export class EpisodeOnPaper {
  readonly measurements: Written[] = [];
  readonly sockets: SocketOnPaper[] = [];
  readonly fittings: (Written & { at: Date })[] = [];
  readonly trials: (Written & { plannedAt: Date; events: { id: string; at: Date }[]; inspections: Written[] })[] = [];
  readonly carried: (Written & { socketId: string })[] = [];
  readonly acceptances: Written[] = [];
  readonly signatures: SignatureOnPaper[] = [];
  private readonly read = new Map<object, { by: string; at: Date }>();
  struckOutAt: Date | null = null;
  onHoldAt: Date | null = null;
  closedAt: Date | null = null;
  deliveredAt: Date | null = null;

  constructor(
    readonly wearer: WearerOnPaper,
    readonly openedAt: Date,
    private readonly opened: Written,
  ) {}

  readCautions(by: string, at: Date): void {
    for (const caution of this.wearer.cautions) if (!this.read.has(caution)) this.read.set(caution, { by, at });
  }

  move(socketId: string, state: string, at: Date): void {
    const socket = this.sockets.find(({ id }) => id === socketId);
    if (socket) Object.assign(socket, { state, stateSince: at });
  }

  /** A socket that is fitted again stays fitted since the first time. */
  fit(socketId: string, at: Date): void {
    if (this.sockets.find(({ id }) => id === socketId)?.state !== "fitted") this.move(socketId, "fitted", at);
  }

  /** The release under which the episode stands. */
  get release(): SignatureOnPaper | undefined {
    return this.signatures.find(({ meaning, withdrawnAt }) => meaning === releaseMeaning && withdrawnAt === undefined);
  }

  bundle(asOf: Date): Bundle {
    const subject = this.sockets.at(-1)?.id;
    return Bundle.parse(
      JSON.parse(
        JSON.stringify({
          format: bundleFormat,
          asOf,
          clinic: { timeZone: clinicTimeZone },
          episode: {
            ...this.opened,
            birthOn: this.wearer.birthOn,
            bodyMassKg: this.wearer.bodyMassKg,
            cautions: this.wearer.cautions.map((caution) => {
              const reading = this.read.get(caution);
              return { ...caution, acknowledgedBy: reading?.by, acknowledgedAt: reading?.at };
            }),
          },
          limbMeasurements: this.measurements,
          sockets: this.sockets,
          fittings: this.fittings,
          wearTrials: this.trials
            .toSorted((a, b) => a.plannedAt.getTime() - b.plannedAt.getTime())
            .map(({ plannedAt: _, events, ...trial }) => ({ ...trial, events: events.toSorted(byTimeThenId) })),
          carried: this.carried
            .filter(({ socketId }) => socketId === subject)
            .map(({ socketId: _, ...adjustment }) => adjustment),
          acceptances: this.release ? this.acceptances : [],
          signOffs: this.signatures.map((signature, index) => ({ id: `signature ${index + 1}`, ...signature })),
          deliveredAt: this.deliveredAt ?? undefined,
        }),
      ),
    );
  }
}

const byTimeThenId = (a: { id: string; at: Date }, b: { id: string; at: Date }): number =>
  a.at.getTime() - b.at.getTime() || (a.id < b.id ? -1 : 1);
