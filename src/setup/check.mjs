/** Type check of every part with its own walls, then the linter. */
import { installPackages, runTool } from './install.mjs';

installPackages();
const TYPE_WALLS = ['src/core', 'src', 'src/capture/worklet.tsconfig.json', 'tests'];
for (const project of TYPE_WALLS) {
  if (runTool('typescript/bin/tsc', ['-p', project]) !== 0) process.exit(1);
}
process.exit(runTool('@biomejs/biome/bin/biome', ['check', '--error-on-warnings', '.']));
