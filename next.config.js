// @ts-check

const underDevelopment = process.env.NODE_ENV === "development";

/**
 * Everything comes from this server and goes to this server. Next writes its start-up scripts into the page, and the
 * drawings carry their sizes as style attributes, hence 'unsafe-inline'; under development React also wants eval.
 */
const contentSecurityPolicy = [
  "default-src 'self'",
  `script-src 'self' 'unsafe-inline'${underDevelopment ? " 'unsafe-eval'" : ""}`,
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self' data:",
  `connect-src 'self'${underDevelopment ? " ws:" : ""}`,
  "worker-src 'self'",
  "manifest-src 'self'",
  "object-src 'none'",
  "frame-src 'none'",
  "frame-ancestors 'none'",
  "base-uri 'self'",
  "form-action 'self'",
].join("; ");

const securityHeaders = [
  { key: "Content-Security-Policy", value: contentSecurityPolicy },
  { key: "X-Frame-Options", value: "DENY" },
  { key: "X-Content-Type-Options", value: "nosniff" },
  // Addresses of pages name wearers' records: other sites never learn them.
  { key: "Referrer-Policy", value: "same-origin" },
  { key: "Cross-Origin-Opener-Policy", value: "same-origin" },
  { key: "Cross-Origin-Resource-Policy", value: "same-origin" },
  { key: "Permissions-Policy", value: "camera=(), microphone=(), geolocation=(), payment=(), usb=(), screen-wake-lock=(self)" },
];

/** @type {import("next").NextConfig} */
export default {
  poweredByHeader: false,
  reactStrictMode: true,
  // A native module: it cannot be bundled.
  serverExternalPackages: ["better-sqlite3"],
  // `npm test` checks the types of everything, as a step of its own. A build checks nothing twice, and a clinic's
  // server does not stand still because of a test's type.
  typescript: { ignoreBuildErrors: true },
  // `next dev` would otherwise write a file of its own at the root.
  agentRules: false,
  headers: () => Promise.resolve([{ source: "/:path*", headers: securityHeaders }]),
};
