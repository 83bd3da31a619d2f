/** The page. Everything starts with the root component; the styles of the page come from index.html. */
import "./ui/app-shell.ts";
