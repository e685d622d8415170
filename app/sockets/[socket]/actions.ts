"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { moveSocket } from "@/lib/records/move-socket";

export const move = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: moveSocket, leadsTo: ({ socketId }) => `/sockets/${socketId}`, labels: { state: "State" } });
