/** Where a command writes, and with which code it ends. */

export const EXIT = { done: 0, wrong: 1, usage: 2, fault: 70 } as const;

/** `json` asks for one JSON document on standard output and nothing else there. */
export type Terminal = {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  readonly json: boolean;
  /** What goes to standard error may be colored. */
  readonly colored: boolean;
};

export type Tool = { readonly name: string; readonly version: string };

/** A document for `--json`: the one thing on standard output. */
export const jsonDocument = (value: Readonly<Record<string, unknown>>): string =>
  `${JSON.stringify({ schemaVersion: 1, ...value }, null, 2)}\n`;

/** The document of a command that could not even start, or broke. */
export const errorDocument = (code: 'usage' | 'fault', message: string, command?: string): string =>
  jsonDocument({ ...(command ? { command } : {}), ok: false, error: { code, message } });

/** Ends a command whose words are wrong: one line, and the code that says so. */
export function refuse(command: string, message: string, { out, err, json }: Terminal): number {
  if (json) out(errorDocument('usage', message, command));
  err(`${message}\n`);
  return EXIT.usage;
}
