import type { ReactNode } from "react";
import { Link } from "@/app/_parts/link";
import { SignOut } from "./draft-sign-out";
import { FindField } from "./find-field";
import { FindKeySwitch } from "./find-key";
import styles from "./frame.module.css";
import { Nav, type NavItem } from "./nav";

export interface FrameProps {
  clinicName: string;
  /** True on demo data: a line above everything says that people and clinic are invented. */
  invented: boolean;
  /** Places in the band; empty before sign-in. The current one is told by the address unless an item says so itself. */
  items: readonly NavItem[];
  /** Who is signed in; without it there is no find field and no sign-out. Only who may see wearers finds them. */
  signedIn?: { id: string; name: string; role: string; mayFind: boolean; signOut: (formData: FormData) => Promise<void> };
  children: ReactNode;
}

/** What stands round every page: skip link, invented-data line, band, the page itself as `main`, foot. */
export function Frame({ clinicName, invented, items, signedIn, children }: FrameProps) {
  return (
    <>
      <a className={styles.skip} href="#main">
        Skip to the page
      </a>
      <header>
        {invented && <p className={styles.invented}>Invented data: no such people, no such clinic.</p>}
        <div className={styles.band}>
          <span className={styles.clinic}>{clinicName}</span>
          {items.length > 0 && <Nav items={items} />}
          {signedIn && (
            <>
              {signedIn.mayFind && <FindField />}
              <div className={styles.who}>
                <Link href="/my-password" className={styles.name}>
                  {signedIn.name}, {signedIn.role}
                  <span className="heard">: your password and your units</span>
                </Link>
                <SignOut accountId={signedIn.id} className={styles.out} signOut={signedIn.signOut} />
              </div>
            </>
          )}
        </div>
      </header>
      <main id="main" tabIndex={-1} className={styles.main}>
        {children}
      </main>
      <footer className={styles.foot}>
        <p>Fitting Ledger advises. A licensed prosthetist decides and signs.</p>
        {signedIn?.mayFind && <FindKeySwitch />}
      </footer>
    </>
  );
}
