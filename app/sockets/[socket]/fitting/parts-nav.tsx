"use client";

import { useEffect, useState } from "react";
import { useTyped } from "@/app/_parts/form-context";
import type { Level } from "@/lib/fit/words";
import styles from "./fitting.module.css";
import { doneOf, partsOfWork } from "./progress";

/** The parts of the fitting, how much of each is answered, and which one is in view. */
export function PartsNav({ level }: { level: Level }) {
  const parts = doneOf(partsOfWork(level), useTyped());
  const inView = usePartInView();
  return (
    <nav aria-label="Parts of the fitting" className={styles.parts}>
      <ol>
        {parts.map(({ id, title, done, of }) => (
          <li key={id}>
            <a href={`#${id}`} aria-current={inView === id ? "true" : undefined}>
              {title}{" "}
              <small>
                {done} of {of}
                <span className="heard"> answered</span>
              </small>
            </a>
          </li>
        ))}
        <li>
          <a href="#save" aria-current={inView === "save" ? "true" : undefined}>
            Save
          </a>
        </li>
      </ol>
    </nav>
  );
}

/** Before saving: what was left free, so that it is left free on purpose. */
export function LeftFree({ level }: { level: Level }) {
  const parts = doneOf(partsOfWork(level), useTyped()).filter(({ free }) => free.length > 0);
  if (parts.length === 0) return <p className="soft">Every check has its answer.</p>;
  return (
    <details className={styles.free}>
      <summary>
        {parts.reduce((sum, { free }) => sum + free.length, 0)} left free; a check that was not made counts as not known
      </summary>
      <ul>
        {parts.map(({ id, title, free }) => (
          <li key={id}>
            <a href={`#${id}`}>{title}</a>: {free.join("; ")}.
          </li>
        ))}
      </ul>
    </details>
  );
}

/** The part that crosses the upper third of the window. */
function usePartInView(): string | undefined {
  const [inView, setInView] = useState<string>();
  useEffect(() => {
    const observer = new IntersectionObserver(
      (entries) => {
        for (const { isIntersecting, target } of entries) if (isIntersecting) setInView(target.id);
      },
      { rootMargin: "-33% 0px -66% 0px" },
    );
    for (const part of document.querySelectorAll("section[data-part]")) observer.observe(part);
    return () => observer.disconnect();
  }, []);
  return inView;
}
