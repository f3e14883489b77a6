import type { Assessment } from '../../audit/assess.ts';
import { standsInTheWay } from '../../audit/stages.ts';
import { type Block, heading, listed, paragraph, strong } from '../document.ts';
import { count, stageBy } from './names.ts';

/** Name, date, versions; a line a stage: ready, or what stands in the way. */
export function head(assessment: Assessment): Block[] {
	const { audit, sheet, warnings } = assessment;
	const stages = audit.stages.map(({ stage, ready, fails }) => {
		const way = audit.findings.filter(finding => finding.stage === stage && standsInTheWay(finding));
		const open = way.length - fails;
		const told = [fails > 0 ? `${count(fails, 'thing')} to mend` : '', open > 0 ? `${open} not known yet` : '']
			.filter(Boolean)
			.join(', ');
		return [strong(`${stageBy(stage, assessment)}: `), ready ? 'ready, as far as the answers go' : told];
	});
	const odd = warnings.map(({ path, found, accepted }) => [`${path}: ${found} is odd; ${accepted}.`]);
	return [
		heading(1, `Swap audit: ${sheet.name}`),
		paragraph(`${audit.date}. swap-audit ${audit.tool}, rules ${audit.rules.slice(0, 12)}.`),
		{ is: 'items', items: stages },
		...listed([paragraph('Look at these answers again:')], odd),
	];
}
