#!/usr/bin/env node
/** Checks the Node version before anything else is loaded, then hands over. */
const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  process.stderr.write(
    `blankwright needs Node 20.19 or newer; this is ${process.versions.node}.\n`,
  );
  process.exit(2);
}
const { main } = await import('./main.js');
process.exitCode = await main(process.argv.slice(2));

export {};
