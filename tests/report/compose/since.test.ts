import { expect, test } from 'vitest';
import type { Since } from '../../../src/audit/audit.ts';
import { renderAudit } from '../../../src/report/render.ts';
import { audited, brokenBuild } from '../../support/audited.ts';

const assessment = audited(brokenBuild());
const composed = (since: Since) => {
	const { text } = renderAudit({ ...assessment, audit: { ...assessment.audit, since } }, 'md', '');
	return /## Since last time\n\n(.*?)\n\n## /s.exec(text)?.[1];
};

test('changes stand by kind, with the part they speak of in words, and figures in the units of the person', () => {
	expect(
		composed({
			date: '2026-04-01',
			logs: [{ name: 'first-drive.csv', date: '2026-04-20', answers: ['boost.logged_peak', 'fuel.pressure_idle'] }],
			changes: [
				{ rule: 'ignition.gap-too-wide', subject: null, change: 'new', by: 'answers' },
				{ rule: 'harness.main-ground-missing', subject: 'block-to-body', change: 'settled', by: 'rules' },
				{ rule: 'gone.rule', subject: null, change: 'still', by: null },
			],
			numbers: [{ name: 'engine.power', unit: 'W', before: 200_000, after: 250_000 }],
		}),
	).toBe(`Compared with the audit of 2026-04-01.

- **Log first-drive.csv of 2026-04-20.** It settled: highest boost seen, fuel pressure at idle.

**Settled: 1**

- Main ground strap missing (engine block to body), because the rules changed.

**New: 1**

- Spark gap too wide for the boost.

**Still open: 1**

- gone.rule.

**Figures that moved**

- \`engine.power\` 268 hp before, 335 hp now.`);
});

test('nothing changed is said', () => {
	expect(composed({ date: '2026-04-01', changes: [], logs: [], numbers: [] })).toBe(
		'Compared with the audit of 2026-04-01. Nothing changed.',
	);
});
