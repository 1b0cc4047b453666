/** Where this machine keeps a Chromium, and how the tests start it. Node built-ins only: runs before anything is installed. */
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

const executable = (path) => {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
};

const onPath = (names) => (process.env.PATH ?? '').split(delimiter).flatMap((folder) => names.map((name) => join(folder, name)));

const PLACES = {
  linux: () => [
    ...onPath(['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'microsoft-edge']),
    '/snap/bin/chromium',
    '/opt/google/chrome/chrome',
  ],
  darwin: () =>
    ['', process.env.HOME ?? ''].flatMap((home) =>
      ['Google Chrome', 'Chromium', 'Microsoft Edge'].map((name) => `${home}/Applications/${name}.app/Contents/MacOS/${name}`),
    ),
  win32: () =>
    [process.env.PROGRAMFILES, process.env['PROGRAMFILES(X86)'], process.env.LOCALAPPDATA]
      .filter(Boolean)
      .flatMap((folder) =>
        ['Google\\Chrome\\Application\\chrome.exe', 'Chromium\\Application\\chrome.exe', 'Microsoft\\Edge\\Application\\msedge.exe'].map(
          (name) => join(folder, name),
        ),
      ),
};

/** Path of an executable browser, `CHROMIUM` first; undefined where there is none. */
export const findChromium = () => [process.env.CHROMIUM, ...(PLACES[process.platform]?.() ?? [])].find((path) => path && executable(path));

/** Arguments for a quiet headless run; with a recording, it is what the page's microphone hears (absolute path, played once). */
export const chromiumArguments = ({ microphoneWav, grant = true } = {}) => [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--use-fake-device-for-media-stream',
  ...(grant ? ['--use-fake-ui-for-media-stream'] : []),
  ...(microphoneWav ? [`--use-file-for-fake-audio-capture=${microphoneWav}%noloop`] : []),
];
