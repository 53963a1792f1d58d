/** Where a command writes, and with which code it ends. */

export const EXIT = { done: 0, wrong: 1, usage: 2, fault: 70 } as const;

/** `json` asks for one JSON document on standard output and nothing else there. */
export type Terminal = {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  readonly json: boolean;
};

export type Tool = { readonly name: string; readonly version: string };
