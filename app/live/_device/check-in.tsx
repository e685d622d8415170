import { type FormEvent, memo, useRef, useState } from "react";
import { Scale } from "@/app/_parts/choices";
import { FormContext } from "@/app/_parts/form-context";
import { type FormState, untouched, valuesOf } from "@/app/_parts/form-state";
import { feelingWords } from "@/app/_parts/skin-words";
import { TypedValues } from "@/app/_parts/typed-values";
import { aspects, type FeelingKind, feelingKinds, thirds } from "@/lib/fit/words";
import { FeltPlaces } from "./felt-places";
import styles from "./live.module.css";
import type { TrialOnDevice } from "./trial-on-device";
import { scales } from "./words";

const names = ["comfort", "pain", "exertion"] as const;
const reporters = [
  ["wearer", "the wearer"],
  ["carer", "a helper"],
  ["clinician", "a clinician"],
] as const;

const doubleTapMs = 1_500;

interface CheckInProps {
  device: TrialOnDevice;
  /** How many there are so far. */
  checkIns: number;
  isOwn: boolean;
}

/** Three ratings and what is felt; kept with one press. Nothing is chosen beforehand but who answers, as last time. */
export const CheckIn = memo(function CheckIn({ device, checkIns, isOwn }: CheckInProps) {
  const [times, setTimes] = useState(0);
  const [state, setState] = useState<FormState>(untouched);
  const [said, setSaid] = useState("");
  const [felt, setFelt] = useState<readonly FeelingKind[]>([]);
  const [who, setWho] = useState<string>(isOwn ? "wearer" : "");
  const [typed] = useState(() => new TypedValues());
  const form = useRef<HTMLFormElement>(null);
  const savedAt = useRef(0);

  function save(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const values = valuesOf(new FormData(event.currentTarget));
    // The second tap of a double one: the form is new, and nothing was answered in it.
    if (Date.now() - savedAt.current < doubleTapMs && names.every((name) => values[name] === undefined)) return;
    const errors: Record<string, string> = {};
    for (const name of names) if (values[name] === undefined) errors[name] = "Press a figure from 0 to 10.";
    if (!values.reportedBy) errors.reportedBy = "Press who answers.";
    const first = Object.keys(errors)[0];
    setState({ values, errors });
    if (first) {
      setSaid("Not saved yet: something is still to be answered.");
      const missing = form.current?.elements.namedItem(first);
      const field = missing instanceof RadioNodeList ? missing[0] : missing;
      if (field instanceof HTMLElement) field.focus();
      return;
    }
    const of = (name: string) => Number(values[name]);
    const number = checkIns + 1;
    const kept = device.press({
      kind: "check-in",
      reportedBy: values.reportedBy as "wearer" | "carer" | "clinician", // one of the choices above
      comfort: of("comfort"),
      pain: of("pain"),
      exertion: of("exertion"),
      feelings: felt.map((kind) => ({
        kind,
        ...placeFelt(values, kind),
      })),
    });
    savedAt.current = Date.now();
    setSaid("Saving…");
    void kept.then((isKept) =>
      setSaid(isKept ? `Check-in ${number} saved.` : `Check-in ${number} is not kept on this device: see above.`),
    );
    setState(untouched);
    setFelt([]);
    setTimes(times + 1);
  }

  /** What is answered now is wrong no more. */
  function answered({ target }: FormEvent<HTMLFormElement>) {
    if (!(target instanceof HTMLInputElement) || state.errors[target.name] === undefined) return;
    const { [target.name]: _, ...errors } = state.errors;
    setState({ values: valuesOf(new FormData(form.current ?? undefined)), errors });
  }

  return (
    <form ref={form} onSubmit={save} onChange={answered} noValidate className={styles.checkIn} aria-label="Check in">
      <FormContext value={{ formId: "check-in", state, pending: false, typed, markNumbers: new Map() }}>
        <div key={times} className={styles.fields}>
          {names.map((name) => (
            <Scale key={name} name={name} label={scales[name].label} ends={scales[name].ends} />
          ))}
          <fieldset className={styles.felt}>
            <legend>
              Anything felt? <span className="soft">optional</span>
            </legend>
            <div className={styles.chips}>
              {feelingKinds.map((kind) => (
                <label key={kind}>
                  <input
                    type="checkbox"
                    checked={felt.includes(kind)}
                    onChange={() => setFelt(felt.includes(kind) ? felt.filter((one) => one !== kind) : [...felt, kind])}
                  />
                  {feelingWords[kind]}
                </label>
              ))}
            </div>
            <FeltPlaces felt={felt} />
          </fieldset>
        </div>
      </FormContext>
      <fieldset className={styles.felt} aria-describedby="who-wrong">
        <legend>Who answers?</legend>
        <div className={styles.chips}>
          {reporters
            .filter(([value]) => !isOwn || value !== "clinician")
            .map(([value, words]) => (
              <label key={value}>
                <input type="radio" name="reportedBy" value={value} checked={who === value} onChange={() => setWho(value)} />
                {words}
              </label>
            ))}
        </div>
        <p id="who-wrong" className={styles.wrong}>
          {who === "" ? state.errors.reportedBy : ""}
        </p>
      </fieldset>
      <button type="submit" className={styles.large}>
        Save this check-in
      </button>
      <p role="status" className={styles.said}>
        {said}
      </p>
    </form>
  );
});

function placeFelt(values: FormState["values"], kind: FeelingKind) {
  const aspect = aspects.find((one) => one === values[`${kind} aspect`]);
  const third = thirds.find((one) => one === values[`${kind} third`]);
  return { ...(aspect ? { aspect } : {}), ...(third ? { third } : {}) };
}
