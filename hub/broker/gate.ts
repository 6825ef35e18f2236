import { randomBytes } from 'node:crypto';
import type { Socket } from 'node:net';
import { Duplex } from 'node:stream';
import { allowance } from './allowance.ts';
import { CONNECT, headLength, type Opening, PUBLISH, readOpening, writeOpening } from './frames.ts';
import type { Limits } from './limits.ts';

const CONNECT_LONGEST = 16 * 1024; // bytes: client id, name, password and a small will. Ours.
const KILOBYTE = 1024;
/** A listener that lets this much wait for it is not listening. Ours. */
const UNREAD = 1024 * 1024; // bytes
const FAREWELL = 1000; // ms for the last word to a client that is let go
const NOTHING = Buffer.alloc(0);

/** Stands in for a message that was too long; nobody outside can know it. */
const STAND_IN = randomBytes(24);
/** How long the message was that these bytes stand in for; null when they are a message. */
export const standsInFor = (payload: Uint8Array): number | null =>
  payload.length > STAND_IN.length && STAND_IN.equals(payload.subarray(0, STAND_IN.length))
    ? Number(Buffer.from(payload.subarray(STAND_IN.length)).toString())
    : null;

/**
 * Between a socket and the broker: lets whole packets through at a bearable rate and size, and first
 * of all one CONNECT and nothing more until its sender is let in. What waits stays in the sender's
 * socket: the wire itself slows it down, and nothing is lost.
 */
export class Gate extends Duplex {
  readonly #socket: Socket;
  readonly #limits: Limits;
  readonly #rate: ReturnType<typeof allowance>;
  #stage: 'connect' | 'asking' | 'in' = 'connect';
  #rest: Buffer = NOTHING;
  /** Bytes of the packet in hand that are still to come, and what becomes of them. */
  #left = 0;
  #skip = false;
  #wants = false;
  #ended = false;
  #waits: NodeJS.Timeout | undefined;
  #late: NodeJS.Timeout | undefined;

  constructor(socket: Socket, limits: Limits) {
    super({ allowHalfOpen: false, writableHighWaterMark: UNREAD });
    this.#socket = socket;
    this.#limits = limits;
    this.#rate = allowance(limits.perSecond, limits.atOnce);
    socket.on('data', (chunk) => {
      this.#rest = this.#rest.length > 0 ? Buffer.concat([this.#rest, chunk]) : chunk;
      this.#work();
    });
    socket.on('end', () => {
      this.#ended = true;
      this.#work();
    });
    socket.on('error', (error) => this.destroy(error));
    socket.on('close', () => {
      if (!this.#ended) this.destroy(); // else what it sent before it left comes through first
    });
    this.#expect(limits.connectWithin, 'a CONNECT');
  }

  /** Its name and password are right: the rest may come. */
  letIn() {
    this.#stage = 'in';
    this.#work();
  }

  #expect(within: number, what: string) {
    clearTimeout(this.#late);
    this.#late = setTimeout(
      () => this.destroy(new Error(`Expected ${what} within ${within / 1000} s, got a part of it`)),
      within,
    );
  }

  #work() {
    try {
      while (!this.destroyed && this.#step());
    } catch (error) {
      this.destroy(error as Error);
    }
    if (this.destroyed) return;
    // Reading goes on only when all that came has gone through: then memory holds one chunk at most.
    const within = this.#left > 0;
    const more = this.#waits === undefined && (within || this.#stage !== 'asking');
    if (more && (this.#wants || this.#skip)) {
      if (this.#ended) this.push(null);
      else this.#socket.resume();
    } else this.#socket.pause();
  }

  /** @returns whether there may be more to do at once. */
  #step(): boolean {
    if (this.#waits !== undefined || (this.#left === 0 && this.#stage === 'asking')) return false;
    if (this.#left > 0) return this.#passOn();
    const opening = readOpening(this.#rest);
    return opening !== null && this.#begin(opening);
  }

  #passOn(): boolean {
    if (this.#rest.length === 0 || (!this.#wants && !this.#skip)) return false;
    const part = this.#rest.subarray(0, this.#left);
    this.#rest = this.#rest.subarray(part.length);
    this.#left -= part.length;
    if (!this.#skip) this.#wants = this.push(part);
    if (this.#left === 0) {
      clearTimeout(this.#late);
      this.#skip = false;
    }
    return true;
  }

  #begin(opening: Opening): boolean {
    const { type, length, size } = opening;
    const { payload, packetWithin } = this.#limits;
    if (this.#stage === 'connect') {
      if (type !== CONNECT || length > CONNECT_LONGEST)
        throw new Error(
          `Expected a CONNECT of at most ${CONNECT_LONGEST} bytes first, got type ${type} of ${length}`,
        );
      this.#left = size + length;
      // Through with it, and no further until it has been looked at.
      this.#stage = 'asking';
      return true;
    }
    const head = type === PUBLISH ? headLength(this.#rest.subarray(size), opening.flags) : 0;
    if (head === null) return false;
    if (type !== PUBLISH && length > payload)
      throw new Error(`Expected a packet of at most ${payload} bytes, got ${length}`);
    const long = length - head > payload;
    if (long && this.#rest.length < size + head) return false;
    const wait = this.#rate.take(1 + Math.min(length, payload) / KILOBYTE);
    if (wait > 0) {
      this.#waits = setTimeout(() => {
        this.#waits = undefined;
        this.#work();
      }, wait);
      return false;
    }
    this.#expect(packetWithin, 'the rest of a packet');
    if (long) this.#replace(opening, head);
    else this.#left = size + length;
    return true;
  }

  /** Passes on a word about a message that is too long, and lets its bytes fall as they come. */
  #replace(opening: Opening, head: number) {
    const { size, length } = opening;
    const about = Buffer.concat([STAND_IN, Buffer.from(String(length - head))]);
    const words = this.#rest.subarray(size, size + head);
    this.#wants = this.push(
      Buffer.concat([writeOpening({ ...opening, length: head + about.length }), words, about]),
    );
    this.#rest = this.#rest.subarray(size + head);
    this.#left = length - head;
    this.#skip = true;
  }

  override _read() {
    this.#wants = true;
    this.#work();
  }

  override _write(chunk: Buffer, _encoding: BufferEncoding, done: (error?: Error | null) => void) {
    if (this.#socket.writableLength > UNREAD) {
      done(new Error(`Expected a client that reads, got ${UNREAD} bytes waiting for it`));
      return;
    }
    this.#socket.write(chunk);
    done();
  }

  override _final(done: () => void) {
    this.#socket.end(done);
  }

  override _destroy(error: Error | null, done: (error: Error | null) => void) {
    clearTimeout(this.#waits);
    clearTimeout(this.#late);
    this.#rest = NOTHING;
    const socket = this.#socket;
    if (error) socket.destroy();
    else {
      // What was said last (a refused CONNECT, say) still arrives; what comes in goes nowhere.
      socket.removeAllListeners('data').resume();
      socket.end();
      setTimeout(() => socket.destroy(), FAREWELL).unref();
    }
    done(error);
  }
}
