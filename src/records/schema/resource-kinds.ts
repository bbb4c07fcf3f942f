// The kinds of resource that things take, as the records name them. By themselves, since what runs in a browser names them and needs no schema.

export const resourceKinds = ["io", "memory", "interrupts", "dma"] as const;
export type ResourceKind = (typeof resourceKinds)[number];
