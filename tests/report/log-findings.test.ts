import { expect, test } from 'vitest';
import type { LogReport } from '../../src/audit/log-report.ts';
import { composeFindings } from '../../src/report/log/findings.ts';
import { printMarkdown } from '../../src/report/markdown.ts';
import { testModel } from '../support/model.ts';

const model = testModel();

const finding = (rule: string, verdict: string, subject: string | null, numbers = {}) => ({
	rule,
	verdict,
	subject,
	numbers,
	missing: [],
	title: model.rulebook.rules.find(({ id }) => id === rule)!.title,
	why: `What pull ${subject} showed.`,
	do: ['First this.', 'Then that.'],
	prove: 'A new log.',
});
const lacks = (pull: number, ...missing: string[]) => ({
	pull,
	value: null,
	unit: null,
	low: null,
	high: null,
	missing,
});

function printed(findings: readonly ReturnType<typeof finding>[], quantities = {}): string {
	const channels = [{ channel: 'lambda_1', samples: 50 }];
	const report = { model, wording: model.wordings.us, json: { findings, quantities, channels } };
	const blocks = composeFindings(report as unknown as LogReport);
	return printMarkdown({ title: '', blocks }, null).replace(/\s+/g, ' ');
}

test('a rule that several pulls break is one task, with what each of the first three showed', () => {
	const text = printed(['3', '1', '2', '4', '5'].map(pull => finding('log.duty-over', 'fails', pull)));
	expect(text.match(/- \[ \]/g)).toHaveLength(1);
	expect(text).toContain('(pulls 1, 2, 3, 4 and 5).');
	expect(text).toMatch(/What pull 1 showed\..*What pull 2 showed\..*What pull 3 showed\..*The same in 2 more pulls\./);
	expect(text).not.toContain('What pull 4 showed');
	expect(printed([finding('log.duty-over', 'fails', '2')])).toContain('in the log (pull 2).');
	expect(printed([finding('log.idle-hunts', 'fails', null)])).toContain('Idle hunts, in the log.** First');
});

test('what cannot be judged stands under what it needs: what was not logged, else what was logged too short', () => {
	const quantities = {
		'log.slip': [lacks(1, 'lambda_1', 'road_speed')],
		'log.lambda_quick': [lacks(1, 'lambda_1')],
	};
	const undecided = [
		finding('log.clutch-slips', 'cannot-tell', '1', { 'log.slip': null }),
		finding('log.lean-under-load', 'cannot-tell', '1', { 'log.lambda_quick': null }),
	];
	const text = printed(undecided, quantities);
	expect(text).toContain('No rule on logs fails.');
	expect(text).toContain('- **road speed:** Clutch slips in the pull');
	expect(text).toContain('- **lambda, the first or only sensor:** Lean under load, in the log');
});
