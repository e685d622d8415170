import type { ReactNode } from "react";
import { Link } from "@/app/_parts/link";
import styles from "./empty.module.css";

interface EmptyProps {
  /** What is not here yet: "Nobody is in fitting yet". */
  title: string;
  /** The first step, where this person may take it. */
  first?: { href: string; label: string };
  /** What will stand here, and how it comes to be. */
  children: ReactNode;
}

export function Empty({ title, first, children }: EmptyProps) {
  return (
    <div className={styles.empty}>
      <p className={styles.title}>{title}</p>
      <p className={styles.words}>{children}</p>
      {first && (
        <Link href={first.href} className="button">
          {first.label}
        </Link>
      )}
    </div>
  );
}
