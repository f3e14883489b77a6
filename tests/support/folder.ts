import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A new folder that is gone again when the test is over. */
export function temporaryFolder(): string {
	const folder = mkdtempSync(join(tmpdir(), 'swap-audit-test-'));
	onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
	return folder;
}
