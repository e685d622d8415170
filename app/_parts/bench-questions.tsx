import { Link } from "@/app/_parts/link";
import type { OpenBenchQuestion } from "@/lib/records/see-bench-questions";
import styles from "./bench-questions.module.css";

/** What the bench asked about release sheets and waits to be told; nothing where it waits for nothing. */
export function BenchQuestions({ questions }: { questions: readonly OpenBenchQuestion[] }) {
  if (questions.length === 0) return null;
  return (
    <section aria-label="The bench asks" className={styles.questions}>
      <ul>
        {questions.map(({ id, words, byName, signOffId, signOff }) => (
          <li key={id}>
            The bench asks about{" "}
            <Link href={`/releases/${signOffId}#bench`}>
              socket {signOff.socket.number} of {signOff.episode.wearer.clinicNumber}
            </Link>
            : {words} <small>{byName}</small>
          </li>
        ))}
      </ul>
    </section>
  );
}
