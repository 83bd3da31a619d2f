export declare const chromiumArguments: string[];
export declare function findBrowser(): string | undefined;
