/** Times two things in turn in one run, so that what else the machine does slows both alike. */
import { Bench } from "tinybench";

/** Something to be timed. What it works on is made anew for each time, and making it is not timed. */
export interface Timed<Input> {
  prepare: () => Input;
  run: (input: Input) => unknown;
}

interface Paired<Input> {
  name: string;
  subject: Timed<Input>;
  baseline: Timed<Input>;
  /** At most so many times the baseline. */
  bar: number;
  /** How often both run untimed first: until the engine has made of them what it makes of code that runs often. */
  firstRuns: number;
}

const rounds = 15;
const roundMs = 60;

/** Prints the medians, and the median of the rounds' ratios of medians; says whether that is within the bar. */
export async function withinBar<Input>({ name, subject, baseline, bar, firstRuns }: Paired<Input>): Promise<boolean> {
  const found: { subject: number; baseline: number; ratio: number }[] = [];
  for (let round = 0; round < rounds; round++) {
    const bench = new Bench({ time: roundMs, warmupTime: 0, warmupIterations: round === 0 ? firstRuns : 10 });
    add(bench, "baseline", baseline);
    add(bench, "subject", subject);
    await bench.run();
    const micros = { subject: medianOf(bench, "subject", name), baseline: medianOf(bench, "baseline", name) };
    found.push({ subject: micros.subject, baseline: micros.baseline, ratio: micros.subject / micros.baseline });
  }
  const own = median(found.map((round) => round.subject));
  const base = median(found.map((round) => round.baseline));
  const ratio = median(found.map((round) => round.ratio));
  const within = ratio <= bar;
  console.log(
    `${name}: ${figure(own)} µs against ${figure(base)} µs = ${figure(ratio)} × (bar ${bar} ×): ${within ? "within" : "misses"}`,
  );
  return within;
}

function add<Input>(bench: Bench, task: string, { prepare, run }: Timed<Input>): void {
  let input = prepare();
  const beforeEach = () => {
    input = prepare();
  };
  bench.add(task, () => void run(input), { beforeEach });
}

function medianOf(bench: Bench, task: string, name: string): number {
  const result = bench.getTask(task)?.result;
  if (result?.state !== "completed") throw new Error(`${name}: ${task} did not finish`);
  return result.latency.p50 * 1000;
}

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
const figure = (value: number): string => value.toFixed(value < 10 ? 2 : 0);
