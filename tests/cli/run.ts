/** Runs the command line as a maker would. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { vi } from 'vitest';
import { main } from '../../src/main.js';

export const ROOT = join(import.meta.dirname, '../..');
export const CLI = join(ROOT, 'dist/cli.js');

export type Where = { readonly cwd?: string; readonly env?: NodeJS.ProcessEnv };

/** The built program in a process of its own. */
export function runCli(args: readonly string[], { cwd, env = {} }: Where = {}) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [CLI, ...args], {
    cwd,
    encoding: 'utf8',
    timeout: 240_000,
    maxBuffer: 1 << 26,
    env: { ...process.env, ...env },
  });
  return { status, stdout, stderr };
}

/** The same in this process, which is warm: for the many cases that are not about streams and files. */
export async function runHere(args: readonly string[]) {
  const written = { stdout: '', stderr: '' };
  const spies = (['stdout', 'stderr'] as const).map((stream) =>
    vi.spyOn(process[stream], 'write').mockImplementation((text) => {
      written[stream] += String(text);
      return true;
    }),
  );
  try {
    const status = await main(args);
    return { status, ...written };
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
}
