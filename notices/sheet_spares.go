package notices

// spares are requests and flyers for a home that nobody listed; its language is unknown, so there is a face in each.
func spares(job Job) []Sheet {
	if len(job.openWindows()) == 0 {
		return nil
	}
	copies := int(job.rule(spareCopies).Value)
	spareRequest := request(job, To{}, nil, copies, requestContent(job, nil, "", job.openWindows()))
	spareFlyer := petFlyer(job, To{}, nil, nil, nil, copies, job.openWindows())
	return []Sheet{spareRequest, spareFlyer}
}
