import styles from "./live.module.css";

/** The clinic; on a phone one press calls it. */
export const WhoToCall = ({ clinic: { name, phone } }: { clinic: { name: string; phone?: string } }) =>
  phone ? (
    <>
      {name},{" "}
      <a className={styles.call} href={`tel:${phone.replace(/[^+\d]/g, "")}`}>
        {phone}
      </a>
    </>
  ) : (
    name
  );
