/**
 * Runs in the page before anything else: notes when Enter was pressed in a field, when the first engine was
 * told and answered, and when the figure being watched had been painted with another text. Plain JavaScript,
 * because the page takes it as it stands.
 */
const watch = { turns: [], workers: [], turn: null, settled: -1, judged: -1, figure: '' };
globalThis.benchWatch = watch;

const now = () => performance.now();

class WatchedWorker extends globalThis.Worker {
	constructor(url, options) {
		super(url, options);
		watch.workers.push({ url: String(url), at: now() });
		this.addEventListener('message', ({ data }) => hear(data));
	}

	postMessage(message, ...rest) {
		if (message.kind === 'apply' && watch.turn) watch.turn.told ??= now();
		super.postMessage(message, ...rest);
	}
}
globalThis.Worker = WatchedWorker;

function hear(message) {
	if (message.kind === 'results' && watch.turn?.told) watch.turn.answered ??= now();
	if (message.kind === 'settled') {
		watch.settled = message.revision;
		if (watch.turn?.told) watch.turn.settled ??= now();
	}
	if (message.kind === 'agreement' && !message.agreement.busy) watch.judged = message.revision;
}

addEventListener(
	'keydown',
	(event) => {
		if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement)) return;
		watch.turn = { enter: event.timeStamp };
		watch.turns.push(watch.turn);
	},
	true
);

/** A frame is painted once the first message after its callbacks is heard. */
function afterPaint(done) {
	requestAnimationFrame(() => {
		const { port1, port2 } = new MessageChannel();
		port1.onmessage = () => done(now());
		port2.postMessage(null);
	});
}

/** Watches the text of one element, which must be there; the texts before and after are kept. */
watch.start = (selector) => {
	const element = document.querySelector(selector);
	watch.figure = element.textContent;
	new MutationObserver(() => {
		const { textContent } = element;
		if (textContent === watch.figure) return;
		watch.figure = textContent;
		const { turn } = watch;
		if (!turn || turn.changed) return;
		turn.changed = now();
		afterPaint((at) => (turn.painted = at));
	}).observe(element, { childList: true, characterData: true, subtree: true });
};

/** Whether the last edit is on screen and both engines are done with it. */
watch.isDone = () =>
	watch.turn?.painted !== undefined &&
	watch.turn.settled !== undefined &&
	watch.judged >= watch.settled;
