#!/usr/bin/env node
// Stands here before anything is built, so that the command's link in node_modules/.bin never points at nothing.
import { existsSync } from 'node:fs';

const main = new URL('../dist/faces/cli/main.js', import.meta.url);
if (existsSync(main)) await import(main.href);
else {
  console.error(
    'waywright: this copy is not built yet; run "npm run build" (or "npm start", which builds it first)',
  );
  process.exitCode = 2;
}
