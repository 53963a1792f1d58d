// Compiles src/ into dist/, starting from an empty dist/ so that nothing stale is run.
import { spawnSync } from 'node:child_process';
import { chmodSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';

const root = new URL('..', import.meta.url);
rmSync(new URL('dist', root), { recursive: true, force: true });
const tsc = createRequire(import.meta.url).resolve('typescript/bin/tsc');
const { status } = spawnSync(process.execPath, [tsc, '-p', 'tsconfig.json'], {
  cwd: root,
  stdio: 'inherit',
});
if (status !== 0) process.exit(status ?? 1);
chmodSync(new URL('dist/cli.js', root), 0o755);
