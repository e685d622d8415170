/** Times two things in turn in one run, so that what else the machine does slows both alike. */
import { Bench } from "tinybench";

interface Paired {
  name: string;
  subject: () => void;
  baseline: () => void;
  /** At most so many times the baseline. */
  bar: number;
}

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
const rounds = 15;

/** The median of the rounds' ratios of medians; prints it, and says whether it is within the bar. */
export async function withinBar({ name, subject, baseline, bar }: Paired): Promise<boolean> {
  const ratios: number[] = [];
  const micros = { subject: [] as number[], baseline: [] as number[] };
  for (let round = 0; round < rounds; round++) {
    const bench = new Bench({ time: 150, warmupTime: round === 0 ? 500 : 30 });
    bench.add("baseline", baseline).add("subject", subject);
    await bench.run();
    const [base, own] = ["baseline", "subject"].map((task) => {
      const result = bench.getTask(task)?.result;
      if (result?.state !== "completed") throw new Error(`${name}: ${task} did not finish`);
      return result.latency.p50 * 1000;
    });
    if (base === undefined || own === undefined) throw new Error(`${name}: nothing was timed`);
    micros.baseline.push(base);
    micros.subject.push(own);
    ratios.push(own / base);
  }
  const ratio = median(ratios);
  const within = ratio <= bar;
  const figure = (value: number) => value.toFixed(value < 10 ? 2 : 0);
  console.log(
    `${name}: ${figure(median(micros.subject))} µs against ${figure(median(micros.baseline))} µs = ${figure(ratio)} × (bar ${bar} ×): ${within ? "within" : "misses"}`,
  );
  return within;
}
