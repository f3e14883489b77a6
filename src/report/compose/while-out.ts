import type { Access } from '../../sheet/access.ts';
import type { ReportContext } from './context.ts';
import { lower } from './names.ts';
import { accessOf } from './tasks.ts';

/** What is open while the engine is on the stand, and comes apart later for nothing else. */
const openNow: readonly Access[] = ['bench', 'heads-off', 'pan-off', 'transmission-out'];

/** Lines of later stages, wrong already, whose work is open only while the engine is out: nobody takes it out once more for a ring gap. */
export function whileOut(context: ReportContext): string[] {
	if (context.next !== 'install') return [];
	const later = context.lines.filter(({ stage }) => stage !== 'install').flatMap(({ fails }) => fails);
	const cheap = later.filter(finding => openNow.includes(accessOf(finding, context)));
	return [...new Set(cheap.map(({ title }) => lower(title)))];
}
