import { type Block, heading, listed } from '../document.ts';
import type { ReportContext } from './context.ts';

/** Answers outside what is plausible. */
export const odd = ({ warnings }: ReportContext): Block[] =>
	listed(
		[heading(2, 'Odd answers')],
		warnings.map(({ path, found, accepted }) => [`${path}: ${found} is odd; ${accepted}.`]),
	);
