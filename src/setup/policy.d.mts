export declare const contentSecurityPolicy: string;
