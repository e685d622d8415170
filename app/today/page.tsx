import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { Advice } from "@/app/_parts/advice";
import { BenchQuestions } from "@/app/_parts/bench-questions";
import { dayAt, dayWords, dueWords } from "@/app/_parts/dates";
import { Empty } from "@/app/_parts/empty";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { stepHeadings, stepOrder } from "@/app/_parts/step-words";
import { requireActor } from "@/lib/access/session";
import { clinicSettings } from "@/lib/records/clinic";
import { now } from "@/lib/records/clock";
import { seeBenchQuestions } from "@/lib/records/see-bench-questions";
import { type CaseloadRow, seeToday } from "@/lib/records/see-today";
import { CaseloadTable } from "./caseload-table";
import styles from "./today.module.css";

export const metadata: Metadata = { title: "Today" };

export default async function Today({
  searchParams,
}: {
  searchParams: Promise<{ whose?: string; stage?: string; sort?: string }>;
}) {
  const actor = await requireActor("/today");
  const asked = await searchParams;
  const [{ episodes, prosthetists }, questions, clinic] = await Promise.all([
    show(seeToday(actor, null)),
    seeBenchQuestions(actor, null),
    clinicSettings(),
  ]);
  const timeZone = clinic?.timeZone ?? "UTC";
  const today = dayAt(now(), timeZone);
  const mine = asked.whose === "mine" && actor.role === "prosthetist";
  const shown = mine ? episodes.filter(({ prosthetistId }) => prosthetistId === actor.id) : episodes;
  const steps = shown.filter(({ nextStep }) => nextStep !== null);
  const late = steps.filter(({ dueOn }) => dueOn !== null && dueOn < today).length;

  return (
    <>
      <PageHead title={`${dayWords(today)}: ${steps.length} ${steps.length === 1 ? "step" : "steps"}, ${late} late`}>
        {actor.role === "prosthetist" && (
          <nav aria-label="Whose episodes" className={styles.whose}>
            <Link href="/today" aria-current={mine ? undefined : "page"}>
              Everyone’s
            </Link>
            <Link href="/today?whose=mine" aria-current={mine ? "page" : undefined}>
              Mine
            </Link>
          </nav>
        )}
      </PageHead>
      <BenchQuestions questions={questions} />
      {episodes.length === 0 ? (
        <Empty title="Nobody is in fitting yet" first={{ href: "/wearers/new", label: "Add a wearer" }}>
          Add a wearer, then open an episode for the limb that is to be fitted. What is to be done next then stands here.
        </Empty>
      ) : (
        <div className={styles.groups}>
          {stepOrder.map((step) => {
            const group = forbiddenFirst(steps.filter(({ nextStep }) => nextStep === step));
            return group.length > 0 && <StepGroup key={step} heading={stepHeadings[step]} rows={group} today={today} />;
          })}
        </div>
      )}
      {shown.length > 0 && (
        <section aria-labelledby="all">
          <h2 id="all">Everyone in fitting, {shown.length}</h2>
          <CaseloadTable
            rows={shown.map((row) => tableRow(row, { prosthetists, timeZone }))}
            today={today}
            first={{ stage: asked.stage ?? "", sort: asked.sort ?? "" }}
          />
        </section>
      )}
      <section>
        <Advice />
      </section>
    </>
  );
}

/** Who may be hurt is looked at before who is late. */
const forbiddenFirst = (rows: CaseloadRow[]): CaseloadRow[] => [
  ...rows.filter(({ decision }) => decision === "must not be released"),
  ...rows.filter(({ decision }) => decision !== "must not be released"),
];

function StepGroup({ heading, rows, today }: { heading: string; rows: CaseloadRow[]; today: string }) {
  return (
    <section className={styles.group}>
      <h2>
        {heading}
        <span>
          <span className="heard">, </span>
          {rows.length}
        </span>
      </h2>
      <ul>
        {rows.map((row) => (
          <li key={row.id}>
            <span>
              <Link href={`/episodes/${row.id}`}>
                <strong>{row.wearer.name}</strong>
              </Link>{" "}
              <span className="soft">
                {row.side} {row.level}
              </span>
            </span>
            {row.dueOn && <span className={row.dueOn < today ? styles.late : "soft"}>{dueWords(row.dueOn, today)}</span>}
            <small>
              {row.decision === "must not be released" && <strong className={styles.forbids}>Must not be released: </strong>}
              {row.nextWhy?.replace(/^Must not be released: /, "")}
            </small>
          </li>
        ))}
      </ul>
    </section>
  );
}

function tableRow(
  row: CaseloadRow,
  { prosthetists, timeZone }: { prosthetists: { id: string; name: string }[]; timeZone: string },
) {
  return {
    id: row.id,
    name: row.wearer.name,
    number: row.wearer.clinicNumber,
    limb: `${row.side} ${row.level}`,
    stage: row.stage,
    sockets: row.socketCount,
    decision: row.decision ?? "not enough evidence",
    dueOn: row.dueOn,
    lastSeenOn: row.lastSeenAt ? dayAt(row.lastSeenAt, timeZone) : null,
    prosthetist: prosthetists.find(({ id }) => id === row.prosthetistId)?.name ?? "",
  };
}
