"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { acknowledgeSheet, answerBench, askAboutSheet } from "@/lib/records/bench-answers";

const leadsTo = ({ signOffId }: { signOffId: string }) => `/releases/${signOffId}#bench`;

export const acknowledge = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: acknowledgeSheet, leadsTo });

export const ask = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: askAboutSheet, leadsTo });

export const answer = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: answerBench, leadsTo });
