/**
 * The page. Everything starts with the root component; the styles of the page come from index.html. Each of these parts
 * of the script runs in a task of its own: together they would hold up the page. The ground is there before all of them.
 */
import "./ui/page-settings.ts";

void import("./functions/index.ts");
void import("./ui/sheet-grid.ts");
void import("./ui/app-shell.ts");
