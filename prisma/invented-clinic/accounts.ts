/** Who works at the invented clinic. No such people: the addresses end in .example, which nobody can own. */
import type { AccountRole } from "@/lib/access/roles";

export const clinicName = "Tidewater Limb Clinic";
export const clinicTimeZone = "Europe/Lisbon";
/** No country has the code 00: nobody can be called there. */
export const clinicPhone = "+00 555 0100";

/** The same for every invented account; nothing of a real person lies behind it. */
export const demoPassword = "low tide at the quay";

interface InventedAccount {
  name: string;
  email: string;
  role: AccountRole;
  credentialsLine?: string;
}

export const staff = {
  lead: {
    name: "Inês Duarte",
    email: "ines.duarte@tidewater.example",
    role: "prosthetist",
    credentialsLine: "Lead prosthetist, invented registration TW-P-01",
  },
  junior: {
    name: "Teun Abarra",
    email: "teun.abarra@tidewater.example",
    role: "prosthetist",
    credentialsLine: "Prosthetist, invented registration TW-P-02",
  },
  assistant: { name: "Lior Menezes", email: "lior.menezes@tidewater.example", role: "assistant" },
  technician: { name: "Ruta Salgueiro", email: "ruta.salgueiro@tidewater.example", role: "technician" },
  administrator: { name: "Noor Behrendt", email: "noor.behrendt@tidewater.example", role: "administrator" },
} as const satisfies Record<string, InventedAccount>;

export type Who = keyof typeof staff;

export const demoAccounts: { name: string; email: string; role: AccountRole }[] = Object.values(staff).map(
  ({ name, email, role }) => ({
    name,
    email,
    role,
  }),
);
