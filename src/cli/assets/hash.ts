import { crypto } from '../../files/crypto.ts';

/** SHA-256 of a text, in hex: handed to the pure rooms, which know no machine. */
export const sha256 = (text: string): string => crypto().createHash('sha256').update(text).digest('hex');
