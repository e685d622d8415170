/** Sign-in and sessions, by better-auth. Its routes are not mounted: people come in through the sign-in page's action. */
import { betterAuth } from "better-auth";
import { prismaAdapter } from "better-auth/adapters/prisma";
import { nextCookies } from "better-auth/next-js";
import { admin, twoFactor } from "better-auth/plugins";
import { createAccessControl } from "better-auth/plugins/access";
import { database } from "@/lib/records/database";
import { siteAddress } from "./address";
import { shortestPassword } from "./password";
import { accountRoles } from "./roles";

// The plugin keeps deactivated people out. Who may do what stands in roles.ts; the plugin's own rights stay empty.
const access = createAccessControl({});
const noRights = Object.fromEntries(accountRoles.map((role) => [role, access.newRole({})]));

const sessionHours = 12;

async function make() {
  return betterAuth({
    appName: "Fitting Ledger",
    baseURL: siteAddress(),
    database: prismaAdapter(await database(), { provider: "sqlite" }),
    emailAndPassword: { enabled: true, disableSignUp: true, minPasswordLength: shortestPassword },
    account: { modelName: "credential" },
    user: { additionalFields: { credentialsLine: { type: "string", required: false, input: false } } },
    session: { expiresIn: sessionHours * 3600, updateAge: 3600 },
    rateLimit: { enabled: true, customRules: { "/sign-in/email": { window: 60, max: 10 } } },
    plugins: [
      admin({
        defaultRole: "assistant",
        adminRoles: ["administrator"],
        roles: noRights,
        bannedUserMessage: "This account is not active.",
      }),
      // A device that was trusted once is no second factor: it is asked for at every sign-in.
      twoFactor({ issuer: "Fitting Ledger" }),
      nextCookies(),
    ],
    telemetry: { enabled: false },
    logger: { level: "error" },
  });
}

let made: ReturnType<typeof make> | undefined;

export const auth = (): ReturnType<typeof make> => {
  made ??= make();
  return made;
};
