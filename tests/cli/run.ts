/** Runs the built command line as a maker would. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

export const ROOT = join(import.meta.dirname, '../..');
export const CLI = join(ROOT, 'dist/cli.js');

export type Where = { readonly cwd?: string; readonly env?: NodeJS.ProcessEnv };

export function runCli(args: readonly string[], { cwd, env = {} }: Where = {}) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [CLI, ...args], {
    cwd,
    encoding: 'utf8',
    timeout: 60_000,
    maxBuffer: 1 << 26,
    env: { ...process.env, ...env },
  });
  return { status, stdout, stderr };
}
