import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { CAR_FILE_EXTENSION } from '../files/car-file.ts';

/** As much of electron-builder's own form as is used here; that program checks the whole of it before it begins. */
export type BuilderConfig = Readonly<Record<string, unknown>>;

/**
 * How installers are made. The version of Electron is the locked one: the builder would look it up in the network. `icon` is the
 * picture that all systems' icons are made of, 1024 px square; `pageOnly` are packages that the built page has taken in already.
 */
export function builderConfig(root: string, icon: string, pageOnly: readonly string[]): BuilderConfig {
  const { version: electronVersion } = JSON.parse(
    readFileSync(join(root, 'node_modules', 'electron', 'package.json'), 'utf8'),
  ) as { version: string };
  return {
    appId: 'local.toeboard',
    productName: 'Toeboard',
    electronVersion,
    directories: { output: 'out/packages', buildResources: 'out/packages/resources' },
    // The build is the program; of the packages those alone that it loads, which the builder takes from "dependencies".
    files: [
      'out/main',
      'out/preload',
      'out/renderer',
      'projects',
      'NOTICE',
      'package.json',
      '!**/*.map',
      // Electron brings its own.
      '!node_modules/node-*/**',
      ...pageOnly.map((name) => `!node_modules/${name}/**`),
    ],
    // A compiled binding is loaded from the disk, not out of an archive; nor can a font be that is found by its path.
    asarUnpack: ['node_modules/better-sqlite3/**', 'node_modules/@resvg/**', 'node_modules/@fontsource/**'],
    extraFiles: ['NOTICE', 'README.md', 'CHANGELOG.md'],
    icon,
    // The bindings come compiled; there is nothing to compile here.
    npmRebuild: false,
    // Whoever can start the program must not be able to make a plain Node of it, nor to put another program in its place.
    electronFuses: {
      runAsNode: false,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableCookieEncryption: true,
      onlyLoadAppFromAsar: true,
      enableEmbeddedAsarIntegrityValidation: true,
      grantFileProtocolExtraPrivileges: false,
    },
    fileAssociations: [
      {
        ext: CAR_FILE_EXTENSION,
        name: 'Toeboard car',
        description: 'A car with its layouts, photos and measurements',
        role: 'Editor',
        rank: 'Owner',
      },
    ],
    // Cars are the person's own: taking the program away takes no data away.
    nsis: {
      oneClick: false,
      perMachine: false,
      deleteAppDataOnUninstall: false,
      allowToChangeInstallationDirectory: true,
    },
    win: { target: ['nsis', 'portable'] },
    mac: { target: ['dmg', 'zip'], category: 'public.app-category.utilities', hardenedRuntime: true },
    linux: {
      target: ['AppImage', 'deb'],
      category: 'Engineering',
      synopsis: 'A drawing board for the steering of hand-built cars',
    },
    publish: null,
  };
}
