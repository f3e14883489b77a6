import { expect, test } from 'vitest';
import { newApp } from '../../src/tui/app.ts';
import { toAudit } from '../../src/tui/judging.ts';
import { withSheet } from '../../src/tui/open-sheet.ts';
import { audited } from '../support/audited.ts';
import { demoSheets } from '../support/demo.ts';
import { testModel } from '../support/model.ts';

test.each(demoSheets())('the stages on the screen are those of the audit beside the sheet: %s', (_, sheet) => {
	const app = toAudit(withSheet(newApp(testModel(), '2026-05-01', '0.0.0', []), sheet, null, null));
	expect(app.assessment!.audit.stages).toEqual(audited(sheet, { draws: 400 }).audit.stages);
});
