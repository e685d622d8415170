import { answerWithFile } from "@/app/_forms/answer-with-file";
import type { Actor } from "@/lib/access/actor";
import { InputRefused } from "@/lib/records/refusals";
import { type Paper, papers } from "./paper";

/** A PDF on the paper that the address asks for: A4, or `?paper=letter`. */
export const answerWithPdf = (
  request: Request,
  make: (actor: Actor, paper: Paper) => Promise<{ name: string; pdf: Buffer }>,
): Promise<Response> =>
  answerWithFile(async (actor) => {
    const paper = new URL(request.url).searchParams.get("paper") ?? "a4";
    if (!isPaper(paper)) throw new InputRefused({ paper: "The paper is a4 or letter." });
    const { name, pdf } = await make(actor, paper);
    return { name: `${name}.pdf`, type: "application/pdf", body: new Uint8Array(pdf), shown: true };
  });

const isPaper = (word: string): word is Paper => Object.hasOwn(papers, word);
