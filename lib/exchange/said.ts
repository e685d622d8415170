/** What a command gives: its exit status, and what goes to the output and to the error output. */
export interface Said {
  status: number;
  said: string;
  complained: string;
}

export function print({ status, said, complained }: Said): void {
  process.stdout.write(said);
  process.stderr.write(complained);
  process.exitCode = status;
}
