// Keeps a waiting command and hands it command lines, while the thread that asked is blocked until the answer is there.
import { fork } from 'node:child_process';
import { workerData } from 'node:worker_threads';

const { waiting, command, stdin, mark, flag, port } = workerData;
let child;

port.on('message', async request => {
	child ??= fork(waiting, [command, stdin, mark], { stdio: ['ignore', 'pipe', 'pipe', 'ipc'], execArgv: [] });
	const [status, out, err] = await ended(child, request);
	if (child.exitCode !== null || child.signalCode !== null) child = undefined;
	port.postMessage({ status, out, err });
	Atomics.store(flag, 0, 1);
	Atomics.notify(flag, 0);
});

/** Status and output of one command line: until both streams have ended it, or the process has ended. */
function ended(process, request) {
	return new Promise(done => {
		const texts = ['', ''];
		let status;
		const look = () => {
			if (status !== undefined && texts.every(text => text.endsWith(mark)))
				finish(status, ...texts.map(text => text.slice(0, -mark.length)));
		};
		const finish = (...answer) => {
			for (const stream of [process.stdout, process.stderr]) stream.removeAllListeners('data');
			process.removeAllListeners();
			done(answer);
		};
		for (const [at, stream] of [process.stdout, process.stderr].entries()) {
			stream.setEncoding('utf8');
			stream.on('data', text => {
				texts[at] += text;
				look();
			});
		}
		process.on('message', value => {
			status = value;
			look();
		});
		process.on('close', code => finish(code, ...texts));
		process.send(request);
	});
}
