import "@fontsource-variable/source-sans-3";
import "@fontsource-variable/source-serif-4";
import "./tokens.css";
import "./_parts/print.css";
import type { Metadata, Viewport } from "next";
import type { ReactNode } from "react";
import { may, type Permission } from "@/lib/access/roles";
import { currentActor } from "@/lib/access/session";
import { clinicSettings } from "@/lib/records/clinic";
import { unitsFor } from "@/lib/records/units";
import { Frame } from "./_parts/frame";
import { UnitsProvider } from "./_parts/units";
import { signOut } from "./sign-in/actions";

export const metadata: Metadata = {
  title: { default: "Fitting Ledger", template: "%s · Fitting Ledger" },
  robots: { index: false, follow: false },
};
export const viewport: Viewport = { width: "device-width", initialScale: 1 };
// Every page shows records of this moment to the person who asks; nothing is made ahead of time.
export const dynamic = "force-dynamic";

const places: { href: string; label: string; permission: Permission }[] = [
  { href: "/today", label: "Today", permission: "see wearers" },
  { href: "/wearers", label: "Wearers", permission: "see wearers" },
  { href: "/workshop", label: "Workshop", permission: "see socket orders" },
  { href: "/rules", label: "Rules", permission: "see rules" },
  { href: "/record", label: "Record", permission: "see the record" },
  { href: "/accounts", label: "Accounts", permission: "see accounts" },
];

export default async function Layout({ children }: { children: ReactNode }) {
  const [clinic, actor] = await Promise.all([clinicSettings(), currentActor()]);
  const units = await unitsFor(actor);
  return (
    <html lang="en">
      <body>
        <Frame
          clinicName={clinic?.name ?? "Fitting Ledger"}
          invented={clinic?.invented ?? false}
          items={actor ? places.filter(({ permission }) => may(actor, permission)) : []}
          {...(actor
            ? { signedIn: { id: actor.id, name: actor.name, role: actor.role, mayFind: may(actor, "see wearers"), signOut } }
            : {})}
        >
          <UnitsProvider units={units}>{children}</UnitsProvider>
        </Frame>
      </body>
    </html>
  );
}
