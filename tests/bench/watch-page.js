/**
 * Runs in the page before anything else: notes when Enter was pressed in a field, when the first engine was
 * told and answered, and when the figure being watched had been painted with another text. Plain JavaScript,
 * because the page takes it as it stands.
 */
const watch = {
	turns: [],
	turn: null,
	settled: -1,
	judged: -1,
	figure: '',
	shown: 0,
	second: 0,
	/** Every message to the first engine that opens a workbook, and every edit with the time until all was answered. */
	openings: [],
	edits: [],
	/** Pieces of work of the page's own thread that took longer than 50 ms, with what they began at. */
	long: []
};
globalThis.benchWatch = watch;
/** The first figure at the top: the cost of a metre. */
const FIGURE = 'section[aria-label="At a glance"] .fact .number';

const now = () => performance.now();

class WatchedWorker extends globalThis.Worker {
	constructor(url, options) {
		super(url, options);
		if (String(url).includes('verifier')) watch.second ||= now();
		this.addEventListener('message', ({ data }) => hear(data));
	}

	postMessage(message, ...rest) {
		// The solver is opened and told of edits as well; the first engine alone is told their revision.
		if (message.revision !== undefined) noteTold(message);
		super.postMessage(message, ...rest);
	}
}
globalThis.Worker = WatchedWorker;

function noteTold({ kind, revision }) {
	if (kind === 'apply' && watch.turn) watch.turn.told ??= now();
	if (kind === 'apply') watch.edits.push({ revision, told: now() });
	if (kind === 'open') watch.openings.push({ at: now() });
}

function hear(message) {
	if (message.kind === 'results' && watch.turn?.told) watch.turn.answered ??= now();
	if (message.kind === 'settled') {
		watch.settled = message.revision;
		for (const edit of watch.edits) if (edit.revision <= watch.settled) edit.settled ??= now();
		for (const opening of watch.openings) opening.settled ??= now();
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

new PerformanceObserver((list) => {
	for (const { startTime, duration } of list.getEntries()) watch.long.push({ startTime, duration });
}).observe({ type: 'longtask', buffered: true });

/** Calls back in a task of its own; asked for in the callbacks of a frame, that is once it is painted. */
function soon(done) {
	const { port1, port2 } = new MessageChannel();
	port1.onmessage = () => done(now());
	port2.postMessage(null);
}

/** Whether the callbacks of a frame are running: what is changed by them is painted with this frame. */
let inFrame = false;
const nextFrame = globalThis.requestAnimationFrame.bind(globalThis);
globalThis.requestAnimationFrame = (callback) =>
	nextFrame((at) => {
		if (!inFrame) soon(() => (inFrame = false));
		inFrame = true;
		callback(at);
	});

/** Calls back when what stands in the page now has been painted. */
function afterPaint(done) {
	if (inFrame) soon(done);
	else nextFrame(() => soon(done));
}

/** Looks once a frame whether the figure is there, and notes when it was painted. */
function lookForFigure() {
	if (/[0-9]/.test(document.querySelector(FIGURE)?.textContent ?? ''))
		afterPaint((at) => (watch.shown = at));
	else requestAnimationFrame(lookForFigure);
}
lookForFigure();

/** Watches the figure, which must be there. */
watch.start = () => {
	const element = document.querySelector(FIGURE);
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

/** How long it takes now until one changed word is painted: what no page can be quicker than. */
watch.frames = async (count) => {
	const word = document.body.appendChild(document.createElement('span'));
	const series = [];
	for (let i = 0; i < count; i++) {
		// At another moment within the frame each time.
		await new Promise((resume) => setTimeout(resume, 20 + ((i * 7) % 17)));
		const start = now();
		word.textContent = String(i);
		series.push((await new Promise(afterPaint)) - start);
	}
	word.remove();
	return series;
};

/** Whether so many edits were made and all are answered. */
watch.areAnswered = (count) =>
	watch.edits.length >= count && watch.edits.every(({ settled }) => settled !== undefined);

/** Whether the last edit is on screen and both engines are done with it. */
watch.isDone = () =>
	watch.turn?.painted !== undefined &&
	watch.turn.settled !== undefined &&
	watch.judged >= watch.settled;
