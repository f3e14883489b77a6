declare const __VERSION__: string | undefined;

/** The program's version, set by the build from package.json. */
export const version: string = typeof __VERSION__ === 'string' ? __VERSION__ : '0.0.0';
