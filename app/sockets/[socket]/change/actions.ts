"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { changeSocket } from "@/lib/records/change-socket";

const labels = {
  material: "Material",
  wallMm: "Wall",
  lengthMm: "Length",
  suspension: "Suspension",
  trimLines: "Trim lines",
  benchNote: "Note for the bench",
  neededOn: "Needed on",
};

export const change = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: changeSocket, leadsTo: ({ socketId }) => `/sockets/${socketId}`, labels });
