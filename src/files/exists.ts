import { existsSync } from 'node:fs';

/** Whether something stands under a path, as far as the system lets one see. Never throws. */
export const exists = (path: string): boolean => existsSync(path);
