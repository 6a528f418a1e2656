import { FLIGHT_KERNEL } from './flight-kernel.ts';

/** What kernel/fly.ts exports: places in its memory (bytes), and its work. */
export type FlightKernel = Readonly<{
  memory: { readonly buffer: ArrayBuffer; grow(pages: number): number };
  stateAt(): number;
  windXAt(): number;
  windYAt(): number;
  stepAt(): number;
  timeAt(): number;
  apexAt(): number;
  pointsAt(): number;
  landedAt(): number;
  discAt(): number;
  profileAt(): number;
  pathAt(): number;
  freeAt(): number;
  setPlane(rise_m: number, slopeX: number, slopeY: number): void;
  setGrid(
    at: number,
    columns: number,
    rows: number,
    x0_m: number,
    y0_m: number,
    cellsPerM: number,
    highest_m: number,
  ): void;
  lookFrom(east_m: number, north_m: number, sinAim: number, cosAim: number): void;
  fly(count: number, isWindy: boolean): void;
  flyOn(count: number, isWindy: boolean): void;
}>;

// Every host of core has both (Node, Chromium); core is compiled without the libraries that declare them.
declare const WebAssembly: Readonly<{
  Module: new (bytes: Uint8Array) => object;
  Instance: new (module: object, imports: object) => Readonly<{ exports: FlightKernel }>;
}>;
declare const atob: (text: string) => string;

let kernel: FlightKernel | null = null;

/**
 * The thread's kernel. There is one a thread, because every WebAssembly memory takes gigabytes of address space and a process
 * has room for about a hundred: whoever flies sets everything it needs first.
 */
export function loadKernel(): FlightKernel {
  if (kernel === null) {
    const module = new WebAssembly.Module(Uint8Array.from(atob(FLIGHT_KERNEL), letter => letter.charCodeAt(0)));
    kernel = new WebAssembly.Instance(module, {}).exports;
  }
  return kernel;
}
