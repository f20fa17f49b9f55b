# A static program in an empty image. It listens on 127.0.0.1 only, so the container shares the machine's network:
#   docker build -t duskweight . && docker run --rm --network host -v duskweight:/data duskweight
FROM golang:1.26-bookworm AS build
WORKDIR /src
COPY go.mod go.sum ./
RUN go mod download
COPY . .
RUN CGO_ENABLED=1 go build -trimpath -tags netgo,osusergo,sqlite_omit_load_extension \
    -ldflags '-s -w -buildid= -linkmode external -extldflags "-static"' -o /out/duskweight ./cmd/duskweight \
 && mkdir -p /out/data /out/tmp && chmod 0700 /out/data && chmod 1777 /out/tmp

FROM scratch
COPY --from=build --chown=65532:65532 /out/ /
ENV HOME=/data XDG_DATA_HOME=/data
VOLUME /data
USER 65532:65532
HEALTHCHECK --interval=30s --timeout=15s CMD ["/duskweight", "alive"]
ENTRYPOINT ["/duskweight"]
CMD ["serve", "-addr", "127.0.0.1:8807", "-no-browser"]
