/** What a device does with the check-ins of a wear trial: it keeps each until the server has said what became of it. */
import { randomUUID } from "node:crypto";

export interface CheckIn {
  id: string;
  kind: "check-in";
  at: string;
  comfort: number;
  pain: number;
  exertion: number;
  reportedBy: "wearer";
}

/** Where it sends to, and as whom. */
export interface Line {
  address: string;
  cookie: string;
  trialId: string;
}

export interface Device {
  /** Recorded, and not answered for yet. */
  kept: Map<string, CheckIn>;
  /** What the server answered for. */
  answered: Map<string, string>;
  /** Answers that a server in order does not give. */
  amiss: string[];
  sends: number;
  answers: number;
  /** It waits for an answer. */
  waits: boolean;
  record: (count: number) => void;
  /** Sends until it is told to stop. */
  work: (line: Line, until: AbortSignal) => Promise<void>;
}

const mostAtOnce = 9;
const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** @param draw numbers from 0 up to 1 */
export function newDevice(draw: () => number): Device {
  const upTo = (most: number) => 1 + Math.floor(draw() * most);
  const device: Device = {
    ...{ kept: new Map(), answered: new Map(), amiss: [], sends: 0, answers: 0, waits: false },
    record(count) {
      for (let made = 0; made < count; made++) {
        const event: CheckIn = {
          ...{ id: randomUUID(), kind: "check-in", at: new Date().toISOString(), reportedBy: "wearer" },
          ...{ comfort: 7 + Math.floor(draw() * 4), pain: Math.floor(draw() * 3), exertion: Math.floor(draw() * 6) },
        };
        device.kept.set(event.id, event);
      }
    },
    async work(line, until) {
      while (!until.aborted) {
        const batch = someOf([...device.kept.values()], upTo(mostAtOnce), draw);
        if (batch.length > 0) await send(device, line, batch, { answerIsLost: draw() < 0.1 });
        await pause(draw() * 25);
      }
    },
  };
  return device;
}

async function send(device: Device, line: Line, events: CheckIn[], { answerIsLost }: { answerIsLost: boolean }): Promise<void> {
  device.sends += 1;
  device.waits = true;
  const answer = await post(line, events);
  device.waits = false;
  if (answer !== null) device.answers += 1;
  // The device hears nothing where the server is down, or dies before it has answered; now and then an answer gets lost.
  if (answer === null || answerIsLost) return;
  if (answer.status !== 200) device.amiss.push(`${answer.status}: ${answer.text.slice(0, 200)}`);
  else
    for (const { id, became } of (JSON.parse(answer.text) as { received: { id: string; became: string }[] }).received) {
      // What the route answers with
      device.answered.set(id, device.answered.get(id) ?? became);
      device.kept.delete(id);
    }
}

async function post({ address, cookie, trialId }: Line, events: CheckIn[]): Promise<{ status: number; text: string } | null> {
  try {
    const response = await fetch(`${address}/trials/${trialId}/events`, {
      method: "POST",
      headers: { cookie, "content-type": "application/json" },
      body: JSON.stringify({ sentAt: new Date().toISOString(), events }),
      signal: AbortSignal.timeout(20_000),
    });
    return { status: response.status, text: await response.text() };
  } catch {
    return null;
  }
}

function someOf<Kind>(list: readonly Kind[], count: number, draw: () => number): Kind[] {
  const left = [...list];
  const chosen: Kind[] = [];
  while (chosen.length < count && left.length > 0) chosen.push(...left.splice(Math.floor(draw() * left.length), 1));
  return chosen;
}
