import { NextResponse } from "next/server";
import { LinkNotOpened, openWearerLink } from "@/lib/records/open-wearer-link";

/** Longer than any link with its year. */
const mostBytes = 1000;

/** A wearer opens the link of their own: `{ token, birthYear }`. Every try that fails gets the same answer. */
export async function POST(request: Request): Promise<Response> {
  const { token, birthYear } = readTry(await request.text());
  try {
    return told(await openWearerLink({ token, birthYear, from: addressOf(request) }), 200);
  } catch (error) {
    if (error instanceof LinkNotOpened) return told({ error: error.tell }, 404);
    throw error;
  }
}

const told = (body: object, status: number) => NextResponse.json(body, { status, headers: { "cache-control": "no-store" } });

/** The network address that asks, as the proxy in front says it. */
const addressOf = (request: Request): string =>
  (request.headers.get("x-forwarded-for")?.split(",")[0]?.trim() || "not known").slice(0, 64);

/** What cannot be read is a try like any other, with nothing in it. */
function readTry(text: string): { token?: unknown; birthYear?: unknown } {
  try {
    const value: unknown = text.length > mostBytes ? null : JSON.parse(text);
    return typeof value === "object" && value !== null ? value : {};
  } catch {
    return {};
  }
}
