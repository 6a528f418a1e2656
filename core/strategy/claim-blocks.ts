const FREE = 0;
const CLAIMED = 1;
const DONE = 2;
/** A thread that was stopped leaves blocks claimed but not done: after this long without news they are done again. */
const PATIENCE_MS = 3000;

/**
 * Does blocks of work that several threads share: each takes the next one nobody has taken, and returns when all are done.
 * The work of a block must give the same result whoever does it, so that doing one twice does no harm.
 * @param states - shared memory, one number a block, 0 at first; stays marked as done for whoever comes later
 */
export function claimBlocks(states: Int32Array, count: number, work: (block: number) => void): void {
  for (let block = 0; block < count; block++) {
    if (Atomics.compareExchange(states, block, FREE, CLAIMED) !== FREE) continue;
    finish(block);
  }
  for (let block = 0; block < count; block++) {
    if (Atomics.load(states, block) === DONE) continue;
    if (Atomics.wait(states, block, CLAIMED, PATIENCE_MS) === 'timed-out') finish(block);
  }

  function finish(block: number): void {
    work(block);
    Atomics.store(states, block, DONE);
    Atomics.notify(states, block);
  }
}
