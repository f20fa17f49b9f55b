module duskweight

go 1.26
