"use client";

import { useContext, useState } from "react";
import { FormContext } from "@/app/_parts/form-context";
import { useHasScripts } from "@/app/_parts/has-scripts";
import { CodeToScan } from "@/app/_parts/scannable-code";
import styles from "./own-link.module.css";

/** The address of a link that was just made, as long as it is the one that holds. It is gone when the page is left. */
export function LinkShownOnce({ holds }: { holds: string | null }) {
  const { state } = useContext(FormContext);
  const made = state.shownOnce;
  if (!made || made.id !== holds) return null;
  const { hostname } = new URL(made.address);
  return (
    <div className={`card ${styles.once}`}>
      <CodeToScan code={made.code} label="The wearer’s own link as a code" />
      <div className={styles.told}>
        <p role="status">
          <strong>Show it now: it is not kept.</strong> The wearer points the telephone’s camera at the code, or you send the
          address. The telephone then asks for the year of birth.
        </p>
        <code className={styles.address}>{made.address}</code>
        <Copy text={made.address} />
        {hostname === "localhost" && (
          <p className="soft">
            This server is reached as “localhost”: the link opens on this machine only. How it gets an address that telephones
            reach stands in docs/running-a-server.md.
          </p>
        )}
      </div>
    </div>
  );
}

function Copy({ text }: { text: string }) {
  const hasScripts = useHasScripts();
  const [said, setSaid] = useState("");
  if (!hasScripts) return null;
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text);
      setSaid("Copied.");
    } catch {
      // Without https a browser offers no clipboard.
      setSaid("This browser does not let it be copied from here. Press the address, which selects it, and copy it.");
    }
  };
  return (
    <p className={styles.copy}>
      <button type="button" className="quiet" onClick={copy}>
        Copy the address
      </button>
      <span role="status">{said}</span>
    </p>
  );
}
