import packageFile from '../../package.json' with { type: 'json' };

/** Of the app, as its package says. */
export function appVersion(): string {
  return packageFile.version;
}
