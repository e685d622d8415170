"use client";

import { usePathname } from "next/navigation";
import { Link } from "@/app/_parts/link";
import styles from "./frame.module.css";

export interface NavItem {
  href: string;
  label: string;
  /** Says that this is the current place where the address does not. */
  current?: boolean;
}

export function Nav({ items }: { items: readonly NavItem[] }) {
  const path = usePathname();
  const chosen = items.find((item) => item.current) ?? items.find(({ href }) => path === href || path.startsWith(`${href}/`));
  return (
    <nav aria-label="Main" className={styles.nav}>
      {items.map((item) => (
        <Link key={item.href} href={item.href} aria-current={item === chosen ? "page" : undefined}>
          {item.label}
        </Link>
      ))}
    </nav>
  );
}
