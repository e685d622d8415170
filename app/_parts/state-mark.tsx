import type { ReactNode } from "react";
import type { Decision } from "@/lib/fit/assessment";
import type { ReadingState } from "@/lib/fit/reading";
import styles from "./state-mark.module.css";

export type Comparison = "better" | "worse" | "within measuring error" | "no difference" | "not measured";
export type Effect = "worked" | "no detectable change" | "worse" | "not measured";
export type MarkedState = ReadingState | Decision | Comparison | Effect;

type Shape = "barred square" | "diamond" | "broken ring" | "half disc" | "ringed disc" | "disc" | "rising" | "falling" | "equal";
type Tone = "forbids" | "notMet" | "unknown" | "close" | "met" | "plain";

/** Every state has a shape and a word; the tone only repeats what they say. */
const looks: Record<MarkedState, { shape: Shape; tone: Tone; word: string }> = {
  forbids: { shape: "barred square", tone: "forbids", word: "forbids" },
  "not met": { shape: "diamond", tone: "notMet", word: "not met" },
  unknown: { shape: "broken ring", tone: "unknown", word: "not known" },
  close: { shape: "half disc", tone: "close", word: "met, close" },
  met: { shape: "disc", tone: "met", word: "met" },
  "must not be released": { shape: "barred square", tone: "forbids", word: "must not be released" },
  "not ready": { shape: "diamond", tone: "notMet", word: "not ready" },
  "not enough evidence": { shape: "broken ring", tone: "unknown", word: "not enough evidence" },
  "ready with conditions": { shape: "ringed disc", tone: "met", word: "ready with conditions" },
  ready: { shape: "disc", tone: "met", word: "ready" },
  better: { shape: "rising", tone: "met", word: "better" },
  worked: { shape: "rising", tone: "met", word: "worked" },
  worse: { shape: "falling", tone: "notMet", word: "worse" },
  "within measuring error": { shape: "equal", tone: "plain", word: "within measuring error" },
  "no difference": { shape: "equal", tone: "plain", word: "no difference" },
  "no detectable change": { shape: "equal", tone: "plain", word: "no detectable change" },
  "not measured": { shape: "broken ring", tone: "unknown", word: "not measured" },
};

/**
 * A state as shape, word and tone.
 *
 * `children` takes the place of the state's own word where more is known: "better by 3.4 mm". `wrap` lets it break into lines.
 */
export function StateMark({ state, wrap = false, children }: { state: MarkedState; wrap?: boolean; children?: ReactNode }) {
  const { shape, tone, word } = looks[state];
  return (
    <span className={`${styles.state} ${styles[tone]} ${wrap ? styles.wrap : ""}`}>
      <svg viewBox="0 0 17 17" aria-hidden="true">
        {shapes[shape]}
      </svg>
      <span>{children ?? word}</span>
    </span>
  );
}

const shapes: Record<Shape, ReactNode> = {
  "barred square": <path fillRule="evenodd" d="M2 2h13v13H2zM5 7.3h7v2.4H5z" fill="currentColor" />,
  diamond: <path d="M8.5 1.6 15.4 8.5 8.5 15.4 1.6 8.5z" fill="none" stroke="currentColor" strokeWidth="2.2" />,
  "broken ring": (
    <circle cx="8.5" cy="8.5" r="6.4" fill="none" stroke="currentColor" strokeWidth="2.2" strokeDasharray="3.1 2.6" />
  ),
  "half disc": (
    <>
      <circle cx="8.5" cy="8.5" r="6.4" fill="none" stroke="currentColor" strokeWidth="2.2" />
      <path d="M8.5 2.1a6.4 6.4 0 0 1 0 12.8z" fill="currentColor" />
    </>
  ),
  "ringed disc": (
    <>
      <circle cx="8.5" cy="8.5" r="6.6" fill="none" stroke="currentColor" strokeWidth="1.6" />
      <circle cx="8.5" cy="8.5" r="3.4" fill="currentColor" />
    </>
  ),
  disc: <circle cx="8.5" cy="8.5" r="5" fill="currentColor" />,
  rising: <path d="M8.5 2.4 15 14H2z" fill="currentColor" />,
  falling: <path d="M8.5 14.6 2 3h13z" fill="none" stroke="currentColor" strokeWidth="2" />,
  equal: <path d="M2.5 5.8h12M2.5 11.2h12" stroke="currentColor" strokeWidth="2.2" />,
};
