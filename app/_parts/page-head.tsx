import type { ReactNode } from "react";
import styles from "./page-head.module.css";

/** The head of a page: what it is, who or what it is about, and what can be done from here. */
export function PageHead({ title, about, children }: { title: ReactNode; about?: ReactNode; children?: ReactNode }) {
  return (
    <header className={styles.head}>
      <div className={styles.words}>
        <h1>{title}</h1>
        {about && <p className={styles.about}>{about}</p>}
      </div>
      {children && <div className={styles.actions}>{children}</div>}
    </header>
  );
}
