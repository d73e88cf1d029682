# Builds and runs the server. The register is in /data; keep it on a volume of this machine, not on a network drive.
FROM node:22-bookworm-slim AS build
RUN apt-get update && apt-get install -y --no-install-recommends python3 make g++ && rm -rf /var/lib/apt/lists/*
WORKDIR /glandkeeper
COPY . .
RUN npm run build && npm prune --omit=dev --no-audit --no-fund

FROM node:22-bookworm-slim
WORKDIR /glandkeeper
COPY --from=build /glandkeeper ./
ENV HOST=0.0.0.0 PORT=4170 GLANDKEEPER_DATA=/data NODE_ENV=production
RUN mkdir /data && chown node:node /data
USER node
VOLUME /data
EXPOSE 4170
HEALTHCHECK --interval=30s --timeout=5s CMD node -e "fetch('http://127.0.0.1:4170/api/health').then((r) => process.exit(r.ok ? 0 : 1), () => process.exit(1))"
CMD ["node", "apps/server/dist/main.js"]
