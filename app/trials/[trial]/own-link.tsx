import { show } from "@/app/_forms/show";
import { dayAndTimeAt } from "@/app/_parts/dates";
import { HiddenField, SelectField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { Link } from "@/app/_parts/link";
import { counted } from "@/app/_parts/numbers";
import { SubmitButton } from "@/app/_parts/submit-button";
import type { Actor } from "@/lib/access/actor";
import { may } from "@/lib/access/roles";
import { mostDays, usualDays } from "@/lib/records/make-wearer-link";
import { type SeenWearerLink, seeWearerLink } from "@/lib/records/see-wearer-link";
import { LinkShownOnce } from "./link-shown-once";
import styles from "./own-link.module.css";
import { makeLink, withdrawLink } from "./own-link-actions";

interface OwnLinkProps {
  actor: Actor;
  trialId: string;
  wearer: { id: string; birthOn: string | null };
  /** The trial is planned or running, and no signature covers it. */
  isOpen: boolean;
  timeZone: string;
}

/** The link with which the wearer records this trial on a telephone of their own: what it is worth now, and its making. */
export async function OwnLink({ actor, trialId, wearer, isOpen, timeZone }: OwnLinkProps) {
  const link = await show(seeWearerLink(actor, trialId));
  const mayMake = may(actor, "make a wearer's link");
  if (!link && !(mayMake && isOpen)) return null;
  return (
    <section aria-labelledby="own-link" className={styles.section}>
      <h2 id="own-link">The wearer’s own link</h2>
      <p className="soft">
        With it the wearer records this trial on their own telephone, also at home, and sees nothing else. It asks for the year of
        birth.
      </p>
      {link ? <State link={link} timeZone={timeZone} /> : <p>No link has been made for this trial.</p>}
      {mayMake && isOpen && (wearer.birthOn ? <Make trialId={trialId} link={link} /> : <NoBirthDate wearerId={wearer.id} />)}
      {mayMake && link && link.state === "open" && (
        <ActionForm action={withdrawLink}>
          <HiddenField name="linkId" value={link.id} />
          <SubmitButton kind="quiet" sending="Withdrawing…">
            Withdraw the link
          </SubmitButton>
          <p className="soft">
            What a telephone sends after that is set aside and judged nowhere; only a stop sign still counts.
          </p>
        </ActionForm>
      )}
    </section>
  );
}

function Make({ trialId, link }: { trialId: string; link: SeenWearerLink | null }) {
  const holds = link?.state === "open";
  return (
    <ActionForm action={makeLink} className={styles.make ?? ""}>
      <HiddenField name="trialId" value={trialId} />
      <LinkShownOnce holds={holds ? link.id : null} />
      <div className={styles.line}>
        <SelectField name="days" label="It holds for" options={days} first={String(usualDays)} />
        <SubmitButton sending="Making…" kind={holds ? "quiet" : "main"}>
          {link ? "Make a new link" : "Make a link"}
        </SubmitButton>
      </div>
      {holds && <p className="soft">A new link ends this one; what a telephone still keeps under it is then set aside.</p>}
    </ActionForm>
  );
}

const days = Array.from({ length: mostDays }, (_, index) => ({ value: String(index + 1), label: counted(index + 1, "day") }));

const NoBirthDate = ({ wearerId }: { wearerId: string }) => (
  <p>
    The link asks for the year of birth, and none is on record.{" "}
    <Link href={`/wearers/${wearerId}/change`}>Enter the birth date</Link> first.
  </p>
);

function State({ link, timeZone }: { link: SeenWearerLink; timeZone: string }) {
  const at = (instant: Date) => dayAndTimeAt(instant, timeZone);
  return (
    <>
      <p>
        <strong>{stateWords(link)}</strong> Made by {link.madeByName}, {at(link.madeAt)}.
      </p>
      <dl className={styles.state}>
        {link.withdrawnAt ? (
          <div>
            <dt>Withdrawn</dt>
            <dd>
              by {link.withdrawnByName}, {at(link.withdrawnAt)}
            </dd>
          </div>
        ) : (
          <div>
            <dt>{link.state === "expired" ? "Ended" : "Ends"}</dt>
            <dd>{at(link.expiresAt)}</dd>
          </div>
        )}
        <div>
          <dt>Opened</dt>
          <dd>{openedWords(link.openings, at)}</dd>
        </div>
        {link.failures > 0 && (
          <div>
            <dt>Refused</dt>
            <dd>{link.failures === 1 ? "one try" : `${link.failures} tries`}</dd>
          </div>
        )}
      </dl>
    </>
  );
}

function stateWords({ state, isGuessedAt }: SeenWearerLink): string {
  if (state === "withdrawn") return "Withdrawn.";
  if (state === "expired") return "Over.";
  return isGuessedAt ? "Locked: the year of birth was wrong ten times. A new link is needed." : "It can be opened.";
}

function openedWords(openings: readonly Date[], at: (instant: Date) => string): string {
  const last = openings.at(-1);
  if (!last) return "not yet";
  return openings.length === 1 ? `once, ${at(last)}` : `${openings.length} times, last ${at(last)}`;
}
