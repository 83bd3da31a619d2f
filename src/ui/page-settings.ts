/** The settings of this page: the first script that runs, so that nobody sees another ground first. */
import { Settings } from "./settings.ts";

export const pageSettings = new Settings();
