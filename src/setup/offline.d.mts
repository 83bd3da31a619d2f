import type { Plugin } from "vite";
export declare function offline(): Plugin;
