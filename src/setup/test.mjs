/** `npm test`: installs what is missing, then type check, lint, unit, reference and browser tests. Arguments go to vitest. */
import { ensureChromium, installPackages, run, runTool } from './install.mjs';

installPackages();
ensureChromium();
const argumentList = process.argv.slice(2);
const checked = argumentList.length > 0 ? 0 : run(process.execPath, ['src/setup/check.mjs']);
process.exit(checked || runTool('vitest/vitest.mjs', ['run', ...argumentList]));
