import { createHash, timingSafeEqual } from "node:crypto";
import { setTimeout as wait } from "node:timers/promises";
import { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { digestOfSecret, newSecret } from "@/lib/access/secrets";
import { countTry, forgiveTry } from "@/lib/access/tries-by-address";
import { actorOfLink } from "@/lib/access/wearer-pass";
import type { Prisma } from "@/lib/generated/prisma/client";
import { now } from "./clock";
import { inTransaction, type Store } from "./command";
import { database } from "./database";
import { Refusal } from "./refusals";
import { mostFailures, opensAt } from "./wearer-link-state";

/** The one answer to every try that fails: it does not say what was wrong. */
export class LinkNotOpened extends Refusal {
  override readonly name = "LinkNotOpened";
  constructor() {
    super("This link cannot be opened. Check the year of birth, or ask your clinic for a new link.");
  }
}

/** No refusal comes sooner: how long it takes does not say how far the try came. */
const evenMs = 250;

// What cannot be read goes the same way as what can, and finds nothing.
const Try = z.object({
  token: z
    .string()
    .regex(/^[\w-]{43}$/)
    .catch(""),
  birthYear: z.preprocess(
    (value) => String(value).trim(),
    z
      .string()
      .regex(/^\d{4}$/)
      .catch(""),
  ),
});

/**
 * Opens a wearer's own link on a device, once the year of birth is right. The device gets a pass; its secret is in the
 * answer and nowhere else.
 *
 * @throws LinkNotOpened whatever was wrong
 */
export async function openWearerLink({ from, ...said }: { token: unknown; birthYear: unknown; from: string }) {
  const since = performance.now();
  const isWithin = countTry(from, now());
  const { token, birthYear } = Try.parse(said);
  const link = await (await database()).wearerLink.findUnique({ where: { tokenDigest: digestOfSecret(token) } });
  const known = link && isWithin ? link : null;
  const opened = await inTransaction(known ? actorOfLink(known, now()) : nobody, (store) =>
    tryToOpen(store, { linkId: known?.id ?? "", birthYear }),
  );
  if (opened) {
    forgiveTry(from);
    return opened;
  }
  await wait(Math.max(0, evenMs - (performance.now() - since)));
  throw new LinkNotOpened();
}

/** Leaves nothing on the trail: there is no link to speak of. */
const nobody: Actor = { id: "nobody", name: "nobody", role: "wearer" };

const withWearer = {
  trial: { include: { episode: { include: { wearer: { select: { id: true, birthOn: true } } } } } },
} as const satisfies Prisma.WearerLinkInclude;

async function tryToOpen(store: Store, { linkId, birthYear }: { linkId: string; birthYear: string }) {
  const link = await store.db.wearerLink.findUnique({ where: { id: linkId }, include: withWearer });
  const episode = link?.trial.episode;
  const isRight = isSame(birthYear, episode?.wearer.birthOn?.slice(0, 4) ?? "not known");
  if (link && episode && isRight && opensAt(link, store.now) && !episode.struckOutAt) {
    const pass = newSecret();
    await store.db.wearerPass.create({
      data: { id: store.newId(), linkId, secretDigest: digestOfSecret(pass), openedAt: store.now },
    });
    await store.note({ ...about(link), action: "opened a wearer's own link" });
    return { pass, trialId: link.trialId };
  }
  await store.db.wearerLink.updateMany({ where: { id: linkId }, data: { failures: { increment: 1 } } });
  // Whoever holds a link that opens no more cannot fill the trail with it: from then on its tries are counted only.
  if (link && link.failures < mostFailures) await store.note({ ...about(link), action: refusedWords(link.failures + 1) });
  return null;
}

const about = (link: Prisma.WearerLinkGetPayload<{ include: typeof withWearer }>) => ({
  kind: "wearer's own link",
  id: link.id,
  wearerId: link.trial.episode.wearer.id,
  after: { trialId: link.trialId },
});

const refusedWords = (failures: number): string =>
  `a try to open a wearer's own link was refused, ${failures} of ${mostFailures}${failures < mostFailures ? "" : ": it opens no more, and further tries are only counted"}`;

/** Takes as long for two that differ early as for two that differ late. */
const isSame = (a: string, b: string): boolean => timingSafeEqual(bytesOf(a), bytesOf(b));

const bytesOf = (text: string): Buffer => createHash("sha256").update(text, "utf8").digest();
