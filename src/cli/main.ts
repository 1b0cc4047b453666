/** The program of the command line: its first word names the command, and the same core answers as on the page. */

import { belts } from '../../shared/belts.ts';
import { measure } from '../core/measure.ts';
import { usageFaultText } from '../words/cli-en.ts';
import { agreementCommand } from './agreement-command.ts';
import { gaugeCommand } from './gauge-command.ts';
import { type ExitCode, measureCommand, type Terminal } from './measure-command.ts';
import { planCommand } from './plan-command.ts';

const terminal: Terminal = {
  answer: (text) => process.stdout.write(text),
  complain: (text) => process.stderr.write(text),
  folder: process.env.INIT_CWD ?? process.cwd(), // npm runs scripts in the project's folder and keeps the person's here
};

const COMMANDS: Readonly<Record<string, (words: readonly string[]) => Promise<ExitCode>>> = {
  measure: (words) => measureCommand(words, { terminal, measure, catalogue: belts }),
  agreement: (words) => agreementCommand(words, { terminal, measure, catalogue: belts }),
  plan: async (words) => planCommand(words, { terminal, catalogue: belts }),
  gauge: (words) => gaugeCommand(words, terminal),
};

/** A reader that has seen enough, such as `head`, closes the pipe; that is no fault of anybody. */
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit();
  });
}

const [command = '', ...words] = process.argv.slice(2);
const run = Object.hasOwn(COMMANDS, command) ? COMMANDS[command] : undefined;
if (run) {
  process.exitCode = await run(words);
} else {
  terminal.complain(`${usageFaultText({ what: 'no-command', command, commands: Object.keys(COMMANDS) })}\n`);
  process.exitCode = 2;
}
